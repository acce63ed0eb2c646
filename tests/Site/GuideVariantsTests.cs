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
            var root = told.RootElement;
            var all = root.GetProperty("combinations").EnumerateObject().ToList();
            var one = all[random.Next(all.Count)];
            others += one.Name == root.GetProperty("recommended").GetString() ? 0 : 1;

            var choices = root.GetProperty("choices").EnumerateArray().Select(choice => choice.GetString()!);
            var values = Values(resolution, headlines.Default(headline.Slice), choices.Zip(one.Name.Split(',')));
            using var json = JsonDocument.Parse(new SheetJson(sheets.Build(values), resolution).Write());
            Compare(root, one, json.RootElement);
        }

        Assert.InRange(others, Sample / 2, Sample);
    }

    [Fact]
    public void Combinations_OfAGuide_AreAllThatCanBeBuilt()
    {
        var resolution = site.Proof.Resolution!;
        foreach (var headline in new Headlines(resolution).All().Take(20))
        {
            using var told = Told(headline);
            Assert.Equal(resolution.Store.Count(headline.Slice), told.RootElement.GetProperty("combinations").EnumerateObject().Count());
        }
    }

    private static void Compare(JsonElement root, JsonProperty one, JsonElement sheet)
    {
        Assert.True(sheet.GetProperty("buildable").GetBoolean());
        Same(sheet.GetProperty("effort").GetProperty("hours"), Block(root, one.Value, "work"));
        Same(sheet.GetProperty("effort").GetProperty("money"), Block(root, one.Value, "parts"));
        Assert.Equal(Number(sheet.GetProperty("effort").GetProperty("days").GetProperty("onePerson")), Block(root, one.Value, "days")[0].GetString());
        Assert.Equal(
            sheet.GetProperty("belts").EnumerateArray().Select(belt => belt.GetProperty("designation").GetString() ?? ""),
            Block(root, one.Value, "belts").EnumerateArray().Select(belt => belt[1].GetString()!));

        var rules = sheet.GetProperty("answers").EnumerateArray().ToDictionary(answer => answer.GetProperty("position").GetString()!, answer => answer.GetProperty("rule").GetString(), StringComparer.Ordinal);
        var lines = one.Value.GetProperty("lines").EnumerateArray().Select(line => line.GetInt32());
        foreach (var (position, line) in root.GetProperty("positions").EnumerateArray().Select(position => position.GetString()!).Zip(lines))
        {
            var told = line < 0 ? null : root.GetProperty("rules").GetProperty(position)[line - First(root, position)].GetString();
            Assert.Equal(rules.GetValueOrDefault(position), told);
        }

        if (sheet.GetProperty("wiring") is { ValueKind: JsonValueKind.Object } wiring)
        {
            var counts = Block(root, one.Value, "plugs").EnumerateArray().ToDictionary(row => row[0].GetString()!, row => row[1].GetString(), StringComparer.Ordinal);
            foreach (var (name, key) in new[] { ("straight in", "straightIn"), ("plug changed", "changed"), ("plug added", "added"), ("capped", "capped") })
            {
                Assert.Equal(Number(wiring.GetProperty("plugs").GetProperty(key)), counts.GetValueOrDefault(name, "0"));
            }
        }
    }

    // A position that does not arise with the recommended choices has no line of number 0.
    private static int First(JsonElement root, string position) =>
        root.GetProperty("rules").GetProperty(position).GetArrayLength() == root.GetProperty("others").EnumerateObject().Count(other => other.Name.StartsWith($"or-{position}-", StringComparison.Ordinal) && other.Name[(position.Length + 4)..].All(char.IsAsciiDigit)) ? 1 : 0;

    private static JsonElement Block(JsonElement root, JsonElement build, string name) => root.GetProperty("blocks").GetProperty(name)[build.GetProperty(name).GetInt32()];

    // The page tells whole numbers, the sheet's data tenths: both are rounded from the same sum.
    private static void Same(JsonElement range, JsonElement told)
    {
        var spread = told[1].GetString()!.Split(" at least, ");
        foreach (var (member, text) in new[] { ("likely", told[0].GetString()!), ("least", spread[0]), ("most", spread[1].Replace(" at most", "", StringComparison.Ordinal)) })
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

    private JsonDocument Told(Headline headline)
    {
        var folder = Path.Combine(site.Folder, "bench", headline.Chassis.Id, string.Join("--", headline.Options.Select(option => option.Value).Prepend(headline.Donor.Id)));
        var text = File.ReadAllText(Path.Combine(folder, "choices.js"));
        return JsonDocument.Parse(text["globalThis.swapwrightChoices = ".Length..].TrimEnd().TrimEnd(';'));
    }
}
