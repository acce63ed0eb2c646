using System.Text;
using Swapwright.Reports;

namespace Swapwright.Tests.Reports;

public class CsvFormTests
{
    [Theory]
    [InlineData("plain", "plain")]
    [InlineData("", "")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("say \"so\"", "\"say \"\"so\"\"\"")]
    [InlineData(" led by a space", "\" led by a space\"")]
    [InlineData("two\nlines", "two lines")]
    [InlineData("two\r\nlines", "two  lines")]
    public void Write_Cell_IsQuotedWhereItHasTo(string value, string wanted) => Assert.Equal(wanted + "\n", CsvForm.Write([value], []));

    /// <summary>What spreadsheets take for a formula, also behind blanks and control characters, and in the wide forms of East Asian text.</summary>
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    [InlineData("  =1+1")]
    [InlineData("\t=1+1")]
    [InlineData("\r=1+1")]
    [InlineData("\u00A0=1+1")]
    [InlineData("\u200E=1+1")]
    [InlineData("\0=1+1")]
    [InlineData("\uFF1D1+1")]
    [InlineData("\uFF0B1")]
    [InlineData("\uFF0D1")]
    [InlineData("\uFF20SUM(A1)")]
    [InlineData("=HYPERLINK(\"https://swaps.example/\",\"x\")")]
    public void Write_Formula_BecomesText(string value)
    {
        var cell = Assert.Single(Assert.Single(Parse(CsvForm.Write([value], []))));
        Assert.DoesNotContain(cell.TrimStart()[0], "=+-@\uFF1D\uFF0B\uFF0D\uFF20");
    }

    [Theory]
    [InlineData("1-2")]
    [InlineData("a=b")]
    [InlineData("me@home")]
    public void Write_SignInside_IsLeftAlone(string value) => Assert.Equal(value + "\n", CsvForm.Write([value], []));

    [Fact]
    public void Write_DrawnCells_ReadBackAsWritten()
    {
        const string Letters = "ab ,\";'é€";
        var random = new Random(7);
        for (var round = 0; round < 300; round++)
        {
            var width = random.Next(1, 6);
            List<string[]> rows = [.. Enumerable.Range(0, random.Next(1, 6)).Select(_ => Enumerable.Range(0, width).Select(_ => Word()).ToArray())];
            Assert.Equal(rows, Parse(CsvForm.Write(rows[0], rows.Skip(1))));
        }

        string Word() => new([.. Enumerable.Range(0, random.Next(1, 8)).Select(_ => Letters[random.Next(Letters.Length)])]);
    }

    [Fact]
    public void Csv_Sheet_HasARowAnAnswer()
    {
        var rows = Parse(new SheetLines(SmallBase.Sheet("hazel-90", "alder-14"), SmallBase.Resolution).Csv());
        Assert.Equal(6, rows.Count);
        Assert.All(rows, row => Assert.Equal(rows[0].Length, row.Length));
        var mount = rows.Single(row => row[1] == "front-mount");
        Assert.Equal(["front", "front-mount", "make", "made", "as-is", "mount-plate", "", "Cut the plate. | Drill it.", "front-mount", "measured", "bench"], mount);
    }

    /// <summary>RFC 4180 §2, with a bare line feed at the end of a record.</summary>
    private static List<string[]> Parse(string csv)
    {
        var rows = new List<string[]>();
        var row = new List<string>();
        var cell = new StringBuilder();
        for (var at = 0; at < csv.Length; at++)
        {
            switch (csv[at])
            {
                case '"' when cell.Length == 0:
                    for (at++; csv[at] != '"' || (at + 1 < csv.Length && csv[at + 1] == '"'); at++)
                    {
                        cell.Append(csv[at]);
                        at += csv[at] == '"' ? 1 : 0;
                    }

                    Assert.Contains(csv[at + 1], ",\n");
                    break;
                case '"':
                    Assert.Fail("a quotation mark inside a cell that is not quoted");
                    break;
                case ',':
                    Next();
                    break;
                case '\n':
                    Next();
                    rows.Add([.. row]);
                    row.Clear();
                    break;
                default:
                    cell.Append(csv[at]);
                    break;
            }
        }

        Assert.Empty(row);
        return rows;

        void Next()
        {
            row.Add(cell.ToString());
            cell.Clear();
        }
    }
}
