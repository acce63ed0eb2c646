using System.Globalization;
using Swapwright.Tests.Commands;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Hostile;

/// <summary>The same base gives the same bytes, wherever and however it is rendered. Whole trees are compared by their hash.</summary>
public sealed class DeterminismTests
{
    private static readonly string s_good = KnowledgeBaseCase.GoodFolder("workshop");

    [Fact]
    public void Site_OtherSurroundings_GivesTheSameTree()
    {
        using var work = new TemporaryFolder();
        Lay(Path.Combine(work.Path, "one"), files => files);
        var wanted = Rendered(work.Path, "one", []);
        Assert.Equal(SmallRuns.HashOfSite(s_good), wanted);

        // A checkout elsewhere, deeper, whose files were written in the opposite order and on another day.
        var deep = Path.Combine("a checkout", "deeper");
        Lay(Path.Combine(work.Path, deep), files => files.Reverse());
        foreach (var file in Directory.EnumerateFiles(Path.Combine(work.Path, deep), "*", SearchOption.AllDirectories))
        {
            File.SetLastWriteTimeUtc(file, new DateTime(2001, 2, 3, 4, 5, 6, DateTimeKind.Utc));
        }

        Assert.Equal(wanted, Rendered(work.Path, deep, []));
        Assert.Equal(wanted, Rendered(work.Path, "one", [("TZ", "Pacific/Kiritimati"), ("LANG", "tr_TR.UTF-8"), ("LC_ALL", "tr_TR.UTF-8"), ("DOTNET_PROCESSOR_COUNT", "1")]));
        Assert.Equal(wanted, Rendered(work.Path, deep, [("TZ", "America/Caracas"), ("LANG", "de_DE.UTF-8"), ("LC_ALL", "de_DE.UTF-8"), ("DOTNET_PROCESSOR_COUNT", "16")]));
    }

    [Theory]
    [InlineData(",", ".", "\u2212", "d.M.yyyy")]
    [InlineData("\u066B", "\u066C", "~", "yyyy/dd/MM")]
    public async Task Site_OtherCulture_GivesTheSameTree(string point, string group, string minus, string date)
    {
        // The program brings no cultures of its own, so one is made that writes everything otherwise.
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat = new NumberFormatInfo { NumberDecimalSeparator = point, NumberGroupSeparator = group, NegativeSign = minus };
        culture.DateTimeFormat.ShortDatePattern = date;
        var wanted = SmallRuns.HashOfSite(s_good);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = culture;
            Assert.Equal($"{minus}1{point}5", await Task.Run(() => (-1.5).ToString(CultureInfo.CurrentCulture)));
            Assert.Equal(wanted, SmallRuns.HashOfSite(s_good));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Of_OneByteOrOneNameOtherwise_IsAnotherHash()
    {
        using var one = new TemporaryFolder();
        one.Write("a/b.html", "x");
        var hash = FolderHash.Of(one.Path);
        one.Write("a/b.html", "y");
        Assert.NotEqual(hash, FolderHash.Of(one.Path));
        one.Write("a/b.html", "x");
        Assert.Equal(hash, FolderHash.Of(one.Path));
        File.Move(Path.Combine(one.Path, "a/b.html"), Path.Combine(one.Path, "a/c.html"));
        Assert.NotEqual(hash, FolderHash.Of(one.Path));
    }

    private static string Rendered(string work, string kb, (string Name, string Value)[] surroundings)
    {
        var run = BuiltProgram.Run(work, surroundings.ToDictionary(one => one.Name, one => one.Value, StringComparer.Ordinal), "site", kb, "--to", "out");
        Assert.True(run.Exit == 0, run.Error);
        return FolderHash.Of(Path.Combine(work, "out"));
    }

    private static void Lay(string folder, Func<IEnumerable<KeyValuePair<string, byte[]>>, IEnumerable<KeyValuePair<string, byte[]>>> order)
    {
        foreach (var (path, bytes) in order(SpoiltBase.Read(s_good)))
        {
            var file = Path.Combine(folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllBytes(file, bytes);
        }
    }
}
