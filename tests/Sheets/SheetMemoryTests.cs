using System.Buffers;
using System.Text;
using System.Text.Json.Nodes;
using Swapwright.Reports;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Site.Pages;

namespace Swapwright.Tests.Sheets;

/// <summary>What is worked out once for many combinations, held against each worked out for itself.</summary>
public class SheetMemoryTests
{
    // Pairs of chassis and donor of the shipped base that are looked at: one in so many, all guides of each.
    private const int Every = 9;

    private static readonly Resolution s_resolution = ShippedKnowledge.Proof().Resolution!;

    [Fact]
    public void Build_GuidesOfAPair_IsWhatEachIsByItself()
    {
        var (together, known, shared) = (new SheetBuilder(s_resolution), new SheetForms(), 0);
        foreach (var pair in Pairs())
        {
            var sheets = pair.ConvertAll(values => together.Build(values));
            foreach (var (values, sheet) in pair.Zip(sheets))
            {
                var alone = new SheetBuilder(s_resolution, many: false).Build(values);
                Assert.True(JsonNode.DeepEquals(Json(alone, null), Json(sheet, known)), $"{sheet.Chassis.Id}, {sheet.Donor.Id}");
                Assert.Equal(new SheetLines(alone, s_resolution).Csv(), Csv(sheet, known));
            }

            shared += sheets.Count(sheet => sheet != sheets[0] && ReferenceEquals(sheet.Wiring, sheets[0].Wiring));
        }

        Assert.True(shared > 0);
    }

    [Fact]
    public void Same_WorkSheetsOfAGuide_AskForTheSameTools()
    {
        var (builder, headlines, same, other) = (new SheetBuilder(s_resolution), new Headlines(s_resolution), 0, 0);
        foreach (var headline in headlines.All().Where((_, at) => at % Every == 0))
        {
            var recommended = headlines.Default(headline.Slice);
            var memory = builder.Remember(recommended);
            var sheet = builder.Build(recommended, memory);
            foreach (var values in OtherOptions(recommended).Where(values => s_resolution.Store.Contains(headline.Slice, values)))
            {
                var switched = builder.Build(values, memory);
                if (BenchSheets.Same(switched, sheet).Contains(BenchSheets.Work))
                {
                    Assert.Equal(sheet.Tools.AsEnumerable(), switched.Tools.AsEnumerable());
                    same++;
                }
                else
                {
                    other++;
                }
            }
        }

        Assert.True(same > 0 && other > 0);
    }

    private static IEnumerable<int[]> OtherOptions(int[] values) =>
        from level in Enumerable.Range(0, values.Length)
        from value in Enumerable.Range(0, s_resolution.Store.Variables[level].Size)
        where value != values[level]
        select values.Select((own, at) => at == level ? value : own).ToArray();

    private static List<List<int[]>> Pairs()
    {
        var headlines = new Headlines(s_resolution);
        return
        [
            .. headlines.All().GroupBy(headline => (headline.Chassis.Id, headline.Donor.Id)).Where((_, at) => at % Every == 0)
                .Select(pair => pair.SelectMany(headline => new[] { headlines.Default(headline.Slice), s_resolution.Store.Witness(headline.Slice) }).ToList()),
        ];
    }

    private static string Csv(Sheet sheet, SheetForms known)
    {
        var buffer = new ArrayBufferWriter<byte>();
        new SheetLines(sheet, s_resolution).Csv(buffer, known);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static JsonNode Json(Sheet sheet, SheetForms? known)
    {
        var buffer = new ArrayBufferWriter<byte>();
        new SheetJson(sheet, s_resolution, known: known).Write(buffer);
        return JsonNode.Parse(buffer.WrittenSpan)!;
    }
}
