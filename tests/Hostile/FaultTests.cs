using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Site.Output;
using Swapwright.Source;

namespace Swapwright.Tests.Hostile;

/// <summary>
/// What goes wrong around the program: it is killed, the disk is full, the folder may not be written, files go while they are read, two
/// write at once. The previous site stays whole, and the message says what it is. <c>SWAPWRIGHT_KILLS=all</c> kills 200 times.
/// </summary>
public sealed class FaultTests : IDisposable
{
    private readonly TemporaryFolder _work = SmallRuns.Bases();

    private string Target => Path.Combine(_work.Path, "out", "site");

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Site_KilledAtAnyMoment_LeavesAWholeSiteAndTheNextRunSucceeds()
    {
        var times = LongRun.Times("SWAPWRIGHT_KILLS", 10, 200);
        string[] bases = [Path.Combine(_work.Path, "kb"), Path.Combine(_work.Path, "kb-later")];
        var whole = Array.ConvertAll(bases, SmallRuns.HashOfSite);
        Assert.NotEqual(whole[0], whole[1]);

        var watch = System.Diagnostics.Stopwatch.StartNew();
        using (var first = SmallRuns.Start(_work.Path, "site", "kb", "--to", "out/site"))
        {
            first.WaitForExit();
            Assert.Equal(0, first.ExitCode);
        }

        var length = watch.Elapsed;
        var random = new Random(8_000);
        var (killed, stands) = (0, 0);
        for (var at = 0; at < times; at++)
        {
            var next = 1 - stands;
            watch.Restart();
            using var run = SmallRuns.Start(_work.Path, "site", next == 0 ? "kb" : "kb-later", "--to", "out/site");
            // From before anything is written to after all of it is; most of the moments where most happens.
            var moment = length * (0.3 + (0.9 * random.NextDouble()));
            if (!run.WaitForExit(moment))
            {
                run.Kill();
                killed++;
            }
            else
            {
                // The machine has more time for it than it had before.
                length = watch.Elapsed;
            }

            run.WaitForExit();
            var found = FolderHash.Of(Target);
            Assert.True(found == whole[stands] || found == whole[next], string.Create(CultureInfo.InvariantCulture, $"killed after {moment}: the site is neither the previous one nor the new one"));

            // The next run, whatever was left behind.
            SmallRuns.Render(bases[next], Target);
            Assert.Equal(whole[next], FolderHash.Of(Target));
            Assert.Equal(["site"], SmallRuns.Beside(Target));
            stands = next;
        }

        Assert.InRange(killed, times / 3, times);
    }

    [Fact]
    public void Site_FilesMayNotGrow_SaysSoAndLeavesThePreviousSite()
    {
        SmallRuns.Render(Path.Combine(_work.Path, "kb"), Target);
        var before = FolderHash.Of(Target);

        // No file may have more than 8 KiB: the first page that is larger fails as on a full disk, in the middle of the site. The runtime's
        // own way of writing code would need a larger file; the signal that comes with the limit is ignored, as on a disk there is none.
        var (exit, text) = SmallRuns.Shell(_work.Path, $"trap '' XFSZ; ulimit -f 8; DOTNET_EnableWriteXorExecute=0 DOTNET_EnableDiagnostics=0 exec dotnet '{SmallRuns.Program}' site kb-later --to out/site");

        Assert.Equal(2, exit);
        Assert.Matches("swapwright: `[^`]+` of the site cannot be written: ", text);
        Assert.Equal(before, FolderHash.Of(Target));
        Assert.Equal(["site"], SmallRuns.Beside(Target));
    }

    [Fact]
    public void Reports_DiskFull_SaySo()
    {
        // A device that is always full.
        var (exit, text) = SmallRuns.Shell(_work.Path, $"dotnet '{SmallRuns.Program}' check kb --report json --to /dev/full");
        Assert.Equal(2, exit);
        Assert.Contains("`/dev/full` cannot be written: ", text, StringComparison.Ordinal);

        (exit, text) = SmallRuns.Shell(_work.Path, $"dotnet '{SmallRuns.Program}' check kb > /dev/full");
        Assert.Equal((2, "swapwright: "), (exit, text[..12]));
        Assert.DoesNotContain("a fault of the program", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Site_TargetMayNotBeWritten_SaysSoAndLeavesThePreviousSite()
    {
        SmallRuns.Render(Path.Combine(_work.Path, "kb"), Target);
        var before = FolderHash.Of(Target);

        // Whoever may do everything on this machine takes the part of somebody who may not.
        var (exit, text) = SmallRuns.Shell(_work.Path, $"""
            chmod -R a+rX . && chmod a-w out
            if [ "$(id -u)" -eq 0 ]; then as="setpriv --reuid=65534 --regid=65534 --clear-groups"; fi
            $as env HOME=/nonexistent DOTNET_EnableDiagnostics=0 dotnet '{SmallRuns.Program}' site kb-later --to out/site; status=$?
            chmod u+w out; exit $status
            """);

        Assert.True(exit == 2, text);
        Assert.Contains("`out/site` cannot be written: ", text, StringComparison.Ordinal);
        Assert.Contains("denied", text, StringComparison.Ordinal);
        Assert.Equal(before, FolderHash.Of(Target));
    }

    [Fact]
    public void Site_WhileAnotherRunWrites_SaysSoAndDisturbsNothing()
    {
        var kb = Path.Combine(_work.Path, "kb");
        SmallRuns.Render(kb, Target);
        var before = FolderHash.Of(Target);

        // The other run is held in the middle of its work: between its first file and its last.
        using (var other = SiteFolder.Open(Target))
        {
            other.Write("half.txt", "Half of a site");
            var (exit, text) = SmallRuns.Shell(_work.Path, $"dotnet '{SmallRuns.Program}' site kb-later --to out/site");

            Assert.Equal(2, exit);
            Assert.Contains("swapwright: `out/site` is being written by another run\n", text, StringComparison.Ordinal);
            Assert.Equal(before, FolderHash.Of(Target));
            Assert.Equal("Half of a site", File.ReadAllText(Path.Combine(_work.Path, "out", ".site.swapwright-new", "half.txt")));
        }

        Assert.Equal(0, SmallRuns.Shell(_work.Path, $"dotnet '{SmallRuns.Program}' site kb-later --to out/site").Exit);
        Assert.Equal(SmallRuns.HashOfSite(Path.Combine(_work.Path, "kb-later")), FolderHash.Of(Target));
    }

    [Fact]
    public async Task Site_TwoAtOnce_OneSiteStandsWhole()
    {
        string[] bases = ["kb", "kb-later"];
        var whole = Array.ConvertAll(bases, name => SmallRuns.HashOfSite(Path.Combine(_work.Path, name)));

        // Whether two runs meet is chance; a machine with other work may start the second when the first is done.
        for (var round = 0; round < 4; round++)
        {
            var runs = Array.ConvertAll(bases, name => SmallRuns.Start(_work.Path, "site", name, "--to", "out/site"));
            var errors = Array.ConvertAll(runs, run => run.StandardError.ReadToEndAsync());
            for (var at = 0; at < runs.Length; at++)
            {
                await runs[at].WaitForExitAsync();
                var error = await errors[at];
                Assert.True(runs[at].ExitCode == 0 || (runs[at].ExitCode == 2 && error.Contains("is being written by another run", StringComparison.Ordinal)), error);
            }

            // At least one of them came through, and what stands is the whole of one site.
            Assert.Contains(0, runs.Select(run => run.ExitCode));
            Assert.Contains(FolderHash.Of(Target), whole);
            Assert.Equal(["site"], SmallRuns.Beside(Target));
            Array.ForEach(runs, run => run.Dispose());
        }
    }

    [Fact]
    public async Task Read_FilesThatComeAndGo_GivesFindingsAndNeverThrows()
    {
        var kb = Path.Combine(_work.Path, "kb");
        string[] files = [.. Directory.EnumerateFiles(kb, "*.yaml", SearchOption.AllDirectories)];
        var aside = Directory.CreateDirectory(Path.Combine(_work.Path, "aside")).FullName;
        using var enough = new CancellationTokenSource();
        // On a thread of its own: those of the pool may all wait for programs of other tests.
        var moving = Task.Factory.StartNew(() =>
        {
            var random = new Random(8_100);
            while (!enough.IsCancellationRequested)
            {
                var file = files[random.Next(files.Length)];
                var away = Path.Combine(aside, "away");
                File.Move(file, away);
                Thread.SpinWait(random.Next(40_000));
                File.Move(away, file);
            }
        }, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        var disturbed = 0;

        // Whether a read meets a move is chance; a machine on which none of the first did tries on.
        for (var round = 0; round < 60 || (disturbed == 0 && round < 3_000); round++)
        {
            var proof = Proof.Of(kb);
            disturbed += proof.HasErrors ? 1 : 0;
            Assert.All(proof.Findings.Where(finding => finding.Severity == Severity.Error), finding => Assert.NotEqual("", finding.Place.File));
        }

        await enough.CancelAsync();
        await moving;
        Assert.True(disturbed > 0, "no file went while it was read: the test shows nothing");
        Assert.False(Proof.Of(kb).HasErrors);
    }

    [Fact]
    public void Read_FileThatGoesBetweenListingAndReading_IsAFinding()
    {
        var path = Path.Combine(_work.Path, "kb", "sources.yaml");
        var found = new FoundFile("sources.yaml", "sources", "sources", new FileInfo(path));
        File.Delete(path);
        Assert.Null(FileContent.Of(found, SourceLimits.Default).Bytes);
    }
}
