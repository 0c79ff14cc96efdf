using LureSim.Swimming.Bodies;

namespace LureSim.Tests.Swimming;

public class Vector3dTests
{
    private static readonly Vector3d A = new(1, -2, 5), B = new(4, 3, -1);

    // Worked by hand.
    [Fact]
    public void Operators_and_their_names_give_what_a_hand_gets()
    {
        Assert.Equal(new Vector3d(5, 1, 4), A.Add(B));
        Assert.Equal(new Vector3d(5, 1, 4), A + B);
        Assert.Equal(new Vector3d(-3, -5, 6), A.Subtract(B));
        Assert.Equal(new Vector3d(-3, -5, 6), A - B);
        Assert.Equal(new Vector3d(3, -6, 15), A.Multiply(3));
        Assert.Equal(new Vector3d(3, -6, 15), 3 * A);
        Assert.Equal(new Vector3d(-1, 2, -5), A.Negate());
        Assert.Equal(new Vector3d(-1, 2, -5), -A);
        Assert.Equal(new Vector3d(1, 2, 5), A.Mirrored);
        Assert.Equal(-7, Vector3d.Dot(A, B));
        Assert.Equal(new Vector3d(-13, 21, 11), Vector3d.Cross(A, B));
        Assert.Equal(13, new Vector3d(3, -4, 12).Length);
    }

    [Fact]
    public void One_component_that_is_no_number_spoils_it()
    {
        Assert.True(A.IsFinite);
        Assert.False((A with { X = double.NaN }).IsFinite);
        Assert.False((A with { Y = double.PositiveInfinity }).IsFinite);
        Assert.False((A with { Z = double.NaN }).IsFinite);
    }
}
