using System.Globalization;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Worksheets;

/// <summary>The list of published values in README.md names tests that there are, with as many values as they are run with.</summary>
public sealed class PublishedListTests
{
    private static readonly List<string[]> s_rows =
    [
        .. File.ReadAllLines(Path.Combine(Reading.Repository(), "tests", "Worksheets", "README.md")).Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Skip(2)
            .Select(line => line.Trim('|').Split('|', StringSplitOptions.TrimEntries)),
    ];

    [Fact]
    public void List_AllRows_AreThirtyValuesOverEightWorksheets()
    {
        Assert.True(s_rows.Sum(row => int.Parse(row[2], CultureInfo.InvariantCulture)) >= 30);
        Assert.True(s_rows.Select(row => row[0]).Distinct(StringComparer.Ordinal).Count() >= 8);
        Assert.Equal(s_rows.Count, s_rows.Select(row => row[1]).Distinct(StringComparer.Ordinal).Count());
        Assert.All(s_rows, row => Assert.NotEmpty(row[3]));
    }

    [Fact]
    public void List_EveryRow_IsATestOfThatWorksheetWithThatManyValues() => Assert.All(s_rows, row =>
    {
        var method = typeof(PublishedListTests).Assembly.GetType($"Swapwright.Tests.Worksheets.{row[0]}.{row[1].Split('.')[0]}")?.GetMethod(row[1].Split('.')[1]);
        Assert.NotNull(method);
        Assert.True(method.IsDefined(typeof(FactAttribute), inherit: true), row[1]);

        // A list never claims more values than the test is run with.
        var runs = Math.Max(1, method.GetCustomAttributes(typeof(InlineDataAttribute), inherit: false).Length);
        Assert.InRange(int.Parse(row[2], CultureInfo.InvariantCulture), 1, runs);
    });
}
