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

    [Theory]
    [InlineData("=cmd|'/c x'!A1", "'=cmd|'/c x'!A1")]
    [InlineData("+1+2", "'+1+2")]
    [InlineData("-2+3", "'-2+3")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("  =1+1", "'  =1+1")]
    [InlineData("\t=1+1", "\"'\t=1+1\"")]
    [InlineData("\r=1+1", "\"'\r=1+1\"")]
    [InlineData("\uff1d1+1", "'\uff1d1+1")]
    [InlineData("=HYPERLINK(\"a\",\"b\")", "\"'=HYPERLINK(\"\"a\"\",\"\"b\"\")\"")]
    [InlineData("slow - steady", "slow - steady")]
    [InlineData("-0.25", "-0.25")]
    [InlineData("+3e-5", "+3e-5")]
    [InlineData("", "")]
    public void A_text_that_a_spreadsheet_would_run_is_marked_as_text(string text, string cell) =>
        Assert.Equal($"a\n{cell}\n", new Csv("a").Row(text).ToString());

    [Fact]
    public void Numbers_keep_their_sign() =>
        Assert.Equal("a,b,c\n-0.25,-3,1E-05\n", new Csv("a", "b", "c").Row(-0.25, -3, 1e-5).ToString());
}
