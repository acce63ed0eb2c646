using System.Globalization;
using System.Text.Json;
using Swapwright.Reports;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Tests.Site;

/// <summary>What the switches of a guide show is held against the sheet of the same combination, as the command gives it.</summary>
[Collection(ShippedSiteCollection.Name)]
public sealed class GuideVariantsTests(ShippedSite site)
{
    private const int Sample = 200;

    [Fact]
    public void Combinations_DrawnFromTheShippedBase_SayWhatTheirSheetsSay()
    {
        var resolution = site.Proof.Resolution!;
        var sheets = new SheetBuilder(resolution);
        var headlines = new Headlines(resolution);
        var random = new Random(20260301);
        var guides = headlines.All().ToList();
        var others = 0;
        for (var drawn = 0; drawn < Sample; drawn++)
        {
            var headline = guides[random.Next(guides.Count)];
            using var told = Told(headline);
            var at = random.Next(told.Combinations);
            others += at == told.Recommended ? 0 : 1;

            var values = Values(resolution, headlines.Default(headline.Slice), told.Options(at));
            using var json = JsonDocument.Parse(new SheetJson(sheets.Build(values), resolution).Write());
            Compare(told, at, json.RootElement);
        }

        Assert.InRange(others, Sample / 2, Sample);
    }

    // Written out block by block, they took 141 MB for 607 guides.
    [Fact]
    public void Files_OfAllGuides_AreSmall()
    {
        var sizes = Directory.EnumerateFiles(Path.Combine(site.Folder, "bench"), "choices.js", SearchOption.AllDirectories).Select(file => new FileInfo(file).Length).ToList();

        Assert.True(sizes.Sum() < 40_000_000 && sizes.Max() < 250_000, FormattableString.Invariant($"{sizes.Sum()} bytes, {sizes.Max()} the largest"));
    }

    [Fact]
    public void Sheets_SaidToHoldForAnotherCombination_AreTheSameThere()
    {
        var resolution = site.Proof.Resolution!;
        var sheets = new SheetBuilder(resolution);
        var headlines = new Headlines(resolution);
        var random = new Random(20260302);
        var guides = headlines.All().ToList();
        var (held, other) = (0, 0);
        for (var drawn = 0; drawn < Sample / 4; drawn++)
        {
            var headline = guides[random.Next(guides.Count)];
            using var told = Told(headline);
            using var recommended = JsonDocument.Parse(new SheetJson(sheets.Build(headlines.Default(headline.Slice)), resolution).Write());
            var at = random.Next(told.Combinations);
            using var json = JsonDocument.Parse(new SheetJson(sheets.Build(Values(resolution, headlines.Default(headline.Slice), told.Options(at))), resolution).Write());
            var same = told.Rows(at, "sheets")[0];
            foreach (var (sheet, member) in new[] { ("wiring", "wiring"), ("belts", "belts"), ("hoses", "hoses"), ("figures", "gearing"), ("figures", "fuel"), ("figures", "load"), ("work", "torques") })
            {
                var isSame = json.RootElement.GetProperty(member).GetRawText() == recommended.RootElement.GetProperty(member).GetRawText();
                Assert.True(isSame || !same.Contains(sheet), $"{headline.Chassis.Id} {headline.Donor.Id}: {member} differs and {sheet} is said to hold");
                (held, other) = same.Contains(sheet) ? (held + 1, other) : (held, other + 1);
            }
        }

        Assert.True(held > 50 && other > 50, FormattableString.Invariant($"{held}, {other}"));
    }

    [Fact]
    public void Combinations_OfAGuide_AreAllThatCanBeBuilt()
    {
        var resolution = site.Proof.Resolution!;
        foreach (var headline in new Headlines(resolution).All().Take(20))
        {
            using var told = Told(headline);
            Assert.Equal(resolution.Store.Count(headline.Slice), told.Combinations);
            Assert.Equal(told.Combinations, Enumerable.Range(0, told.Combinations).Select(at => string.Join(',', told.Options(at))).Distinct(StringComparer.Ordinal).Count());
        }
    }

    private static void Compare(ChoicesFile told, int at, JsonElement sheet)
    {
        Assert.True(sheet.GetProperty("buildable").GetBoolean());
        Same(sheet.GetProperty("effort").GetProperty("hours"), told.Rows(at, "work")[0]);
        Same(sheet.GetProperty("effort").GetProperty("money"), told.Rows(at, "parts")[0]);
        Assert.Equal(Number(sheet.GetProperty("effort").GetProperty("days").GetProperty("onePerson")), told.Rows(at, "days")[0][0]);
        Assert.Equal(
            sheet.GetProperty("belts").EnumerateArray().Select(belt => belt.GetProperty("designation").GetString() ?? ""),
            told.Rows(at, "belts").Select(belt => belt[1]));
        Assert.Equal(
            sheet.GetProperty("cautions").EnumerateArray().Count(),
            told.Rows(at, "cautions").Count);

        var rules = sheet.GetProperty("answers").EnumerateArray().ToDictionary(answer => answer.GetProperty("position").GetString()!, answer => answer.GetProperty("rule").GetString(), StringComparer.Ordinal);
        foreach (var (position, rule) in told.Lines(at))
        {
            Assert.Equal(rules.GetValueOrDefault(position), rule);
        }

        if (sheet.GetProperty("wiring") is { ValueKind: JsonValueKind.Object } wiring)
        {
            var counts = told.Rows(at, "plugs").ToDictionary(row => row[0].Replace("plugs ", "plug ", StringComparison.Ordinal), row => row[1], StringComparer.Ordinal);
            foreach (var (name, key) in new[] { ("straight in", "straightIn"), ("plug changed", "changed"), ("plug added", "added"), ("capped", "capped") })
            {
                Assert.Equal(Number(wiring.GetProperty("plugs").GetProperty(key)), counts.GetValueOrDefault(name, "0"));
            }
        }
    }

    // The page tells whole numbers, the sheet's data tenths: both are rounded from the same sum.
    private static void Same(JsonElement range, IReadOnlyList<string> told)
    {
        var spread = told[1].Replace("on average, ", "", StringComparison.Ordinal).Split('–');
        foreach (var (member, text) in new[] { ("likely", told[0]), ("least", spread[0]), ("most", spread[1]) })
        {
            Assert.Equal(range.GetProperty(member).GetDouble(), double.Parse(text, NumberStyles.AllowThousands, CultureInfo.InvariantCulture), 0.551);
        }
    }

    private static string Number(JsonElement number) => number.GetInt32().ToString(CultureInfo.InvariantCulture);

    private static int[] Values(Resolution resolution, int[] recommended, IEnumerable<(string Choice, string Option)> chosen)
    {
        foreach (var (choice, option) in chosen)
        {
            var level = resolution.Space.LevelOf(choice);
            recommended[level] = resolution.Store.Variables[level].Values.IndexOf(option);
        }

        return recommended;
    }

    private ChoicesFile Told(Headline headline)
    {
        var folder = Path.Combine(site.Folder, "bench", headline.Chassis.Id, string.Join("--", headline.Options.Select(option => option.Value).Prepend(headline.Donor.Id)));
        var guide = Path.Combine(site.Folder, "guide", Path.GetRelativePath(Path.Combine(site.Folder, "bench"), folder) + ".html");
        return new ChoicesFile(Path.Combine(folder, "choices.js"), guide);
    }
}
