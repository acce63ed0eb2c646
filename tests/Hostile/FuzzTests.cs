using System.Diagnostics;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Site;
using Swapwright.Site.Output;
using Swapwright.Site.Rendering;
using Swapwright.Space;
using Swapwright.Tests.Commands;
using Swapwright.Tests.Site;

namespace Swapwright.Tests.Hostile;

/// <summary>
/// Spoilt bases through all that <c>check</c> and <c>site</c> do. 1,000 in a test run; <c>SWAPWRIGHT_FUZZ=all</c> tries 20,000, another
/// number that many; <c>SWAPWRIGHT_FUZZ_SEED</c> begins elsewhere.
/// </summary>
public sealed class FuzzTests
{
    private const int FirstSeed = 20_261_001;

    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(5);

    [Fact]
    public void CheckAndSite_SpoiltBases_AlwaysEndWithAnAnswer()
    {
        var times = LongRun.Times("SWAPWRIGHT_FUZZ", 1_000, 20_000);
        var first = Environment.GetEnvironmentVariable("SWAPWRIGHT_FUZZ_SEED") is { Length: > 0 } seed ? int.Parse(seed, CultureInfo.InvariantCulture) : FirstSeed;
        var good = SpoiltBase.Good();
        using var work = new TemporaryFolder();
        Assert.All(good, files => Assert.Equal(0, Outcome(files, work.Path)));
        var outcomes = new int[3];
        var faults = new List<string>();
        var slowest = TimeSpan.Zero;
        for (var at = 0; at < times; at++)
        {
            var spoilt = SpoiltBase.Draw(first + at, good[at % good.Count]);
            var outcome = -1;
            var watch = Stopwatch.StartNew();
            try
            {
                outcome = Outcome(spoilt.Files, work.Path);
            }
            catch (Exception fault)
            {
                faults.Add(string.Create(CultureInfo.InvariantCulture, $"seed {first + at}, {string.Join("; ", spoilt.Done)}: {fault}"));
            }

            if (watch.Elapsed > s_patience)
            {
                // A machine that is busy elsewhere is no fault: only what is slow again is.
                watch.Restart();
                _ = Outcome(spoilt.Files, work.Path);
                Assert.True(watch.Elapsed < s_patience, string.Create(CultureInfo.InvariantCulture, $"seed {first + at} takes {watch.Elapsed}: {string.Join("; ", spoilt.Done)}"));
            }

            slowest = watch.Elapsed > slowest ? watch.Elapsed : slowest;
            if (outcome >= 0)
            {
                outcomes[outcome]++;
            }
        }

        Assert.True(faults.Count == 0, string.Join("\n\n", faults.Take(10)));

        // The draw has to be worth its time: some bases come out sound and are rendered, most do not.
        Assert.InRange(outcomes[0], times / 20, times * 3 / 4);
        Assert.InRange(outcomes[1], times / 5, times);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{times} spoilt bases from seed {first}: {outcomes[0]} sound and rendered, {outcomes[1]} with findings, {outcomes[2]} not run; the slowest took {slowest.TotalMilliseconds:0} ms"));
    }

    /// <summary>The program itself, on a few: what is called here is what it runs.</summary>
    [Fact]
    public void Program_SpoiltBases_ExitsAsTheOutcomeSays()
    {
        var good = SpoiltBase.Good();
        for (var at = 0; at < 5; at++)
        {
            using var work = new TemporaryFolder();
            var spoilt = SpoiltBase.Draw(FirstSeed + (at * 37), good[at % good.Count]);
            var outcome = Outcome(spoilt.Files, work.Path);
            var run = BuiltProgram.Run(work.Path, "site", "kb", "--to", "out/again");
            Assert.Equal(outcome, run.Exit);
            if (outcome == 1)
            {
                Assert.Matches(@"(?m)kb[/\w.-]*:\d+:\d+", run.Error);
            }
        }
    }

    /// <summary>The exit code that <c>site</c> has for a base; fails where anything is said without a place, or written outside.</summary>
    private static int Outcome(SortedDictionary<string, byte[]> files, string work)
    {
        var kb = Path.Combine(work, "kb");
        var target = Path.Combine(work, "out", "site");
        if (Directory.Exists(kb))
        {
            Directory.Delete(kb, recursive: true);
        }

        if (Directory.Exists(target))
        {
            Directory.Delete(target, recursive: true);
        }

        foreach (var (path, bytes) in files)
        {
            var file = Path.Combine(kb, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllBytes(file, bytes);
        }

        var outcome = Run(kb, target);
        Assert.Equal(outcome == 0, Directory.Exists(target));
        Assert.Equal(["kb", .. Directory.Exists(Path.Combine(work, "out")) ? (string[])["out"] : []], Directory.EnumerateFileSystemEntries(work).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(outcome == 0 ? ["site"] : [], Directory.Exists(Path.Combine(work, "out")) ? SmallRuns.Beside(Path.Combine(work, "out", "site")) : []);
        Assert.Equal(files.Keys, Directory.EnumerateFiles(kb, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(kb, file)).Order(StringComparer.Ordinal));
        return outcome;
    }

    private static int Run(string kb, string target)
    {
        Proof proof;
        try
        {
            proof = Proof.Of(kb);
        }
        catch (SpaceLimitException)
        {
            return 2;
        }

        using var text = new StringWriter(CultureInfo.InvariantCulture);
        new CheckText(Swapwright.Commands.Terminal.Plain(text), proof, "kb").Write();
        _ = CheckJson.Write(proof);
        _ = CheckSarif.Write(proof, "kb");
        _ = new CheckMarkdown(proof, "kb").Write();
        foreach (var finding in proof.Findings)
        {
            Placed(finding);
        }

        if (proof.HasErrors || proof.Resolution is null)
        {
            Assert.NotEmpty(proof.Findings);
            return 1;
        }

        try
        {
            SiteBuilder.Render(proof, target, BuiltIn.Templates.Over(TemplateFolder.Of(kb)));
            return 0;
        }
        catch (TemplateException problem)
        {
            Assert.True(problem.Line >= 1 && problem.Column >= 1, problem.Message);
            return 1;
        }
        catch (SiteFolderException)
        {
            return 2;
        }
    }

    private static void Placed(Finding finding)
    {
        Assert.NotEqual("", finding.Place.File);
        Assert.False(Path.IsPathRooted(finding.Place.File), finding.ToString());
        Assert.True(finding.Place is { Line: >= 1, Column: >= 1 }, finding.ToString());
        Assert.True((finding.Place.EndLine, finding.Place.EndColumn).CompareTo((finding.Place.Line, finding.Place.Column)) >= 0, finding.ToString());
        Assert.NotEqual("", finding.Message);
    }
}
