using LureSim.Cli.Output;

namespace LureSim.Tests.Cli;

public class CsvTests
{
    [Fact]
    public void Cells_are_quoted_where_they_must_be() =>
        Assert.Equal("a,b,c\n\"x,y\",\"say \"\"hi\"\"\",\"two\nlines\"\n", new Csv("a", "b", "c").Row("x,y", "say \"hi\"", "two\nlines").ToString());

    [Fact]
    public void Missing_and_impossible_numbers_are_empty() =>
        Assert.Equal("a,b,c,d\n,,0.1,3\n", new Csv("a", "b", "c", "d").Row(null, double.NaN, 0.1, 3).ToString());
}
