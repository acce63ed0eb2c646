using System.Text.Json;
using Swapwright.Tests.Reports;

namespace Swapwright.Tests.Commands;

/// <summary>Exit codes, and what goes where, of the program as it is built.</summary>
public sealed class ProgramTests : IDisposable
{
    private readonly TemporaryFolder _base = SmallBase.Copy();

    public void Dispose() => _base.Dispose();

    [Fact]
    public void Check_SoundBase_Exits0()
    {
        var run = BuiltProgram.Run(_base.Path, "check", ".");
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.EndsWith("0 errors, 0 warnings, 0 notes.\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_BrokenBase_Exits1AndWritesTheReport()
    {
        _base.Write("rules/front/clash.yaml", "title: Clash\nthen: {answers: {front-mount: {source: new, treatment: as-is}}}\nsources: [bench]\n");
        var run = BuiltProgram.Run(_base.Path, "check", ".", "--report", "sarif", "--to", "out.sarif");
        Assert.Equal(new Run(1, "", ""), run);
        var bytes = File.ReadAllBytes(Path.Combine(_base.Path, "out.sarif"));
        Assert.Equal((byte)'{', bytes[0]);
        using var log = JsonDocument.Parse(bytes);
        Assert.Equal(2, log.RootElement.GetProperty("runs")[0].GetProperty("results").GetArrayLength());
    }

    [Fact]
    public void Check_MissingFolder_Exits2()
    {
        var run = BuiltProgram.Run(_base.Path, "check");
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Equal("swapwright: no folder `swap-kb`; name the folder of a knowledge base, the one with kb.yaml in it\n", run.Error);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("preview")]
    public void Program_FolderAroundABase_NamesTheBaseAndAsksToRemoveNothing(string command)
    {
        using var around = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(around.Path, "generator"));
        Directory.CreateDirectory(Path.Combine(around.Path, "ours"));
        File.WriteAllText(Path.Combine(around.Path, "ours", "kb.yaml"), "title: Ours\n");

        var run = BuiltProgram.Run(around.Path, command, ".");

        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Equal($"swapwright: `.` is no knowledge base; name the folder that holds kb.yaml, as `{Path.Combine(".", "ours")}`\n", run.Error);
    }

    [Theory]
    [InlineData("no form of report `xml`; known: text, markdown, json, sarif", "check", ".", "--report", "xml")]
    [InlineData("no chassis `hazel-9O`; did you mean `hazel-90`?", "sheet", "hazel-9O", "alder-14", "--base", ".")]
    [InlineData("chek", "chek", ".")]
    [InlineData("colour", "check", ".", "--colour", "never")]
    [InlineData("`no-such/out.txt` cannot be written: ", "check", ".", "--to", "no-such/out.txt")]
    [InlineData("name the position, the signal or the worksheet last, as in `swapwright why CHASSIS DONOR gearbox=keep radiator`", "why", "hazel-90", "alder-14", "gearbox=keep", "-k", ".")]
    public void Run_BadArguments_Exits2AndSaysWhich(string message, params string[] arguments)
    {
        var run = BuiltProgram.Run(_base.Path, arguments);
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.StartsWith("swapwright: ", run.Error, StringComparison.Ordinal);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_NoArguments_ExplainsEveryCommand()
    {
        var run = BuiltProgram.Run(_base.Path);
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.All(["check", "sheet", "why"], command => Assert.Contains($"\n    {command} ", run.Output, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("check", "Errors were found")]
    [InlineData("site", "an earlier site is left as it was")]
    [InlineData("sheet", "The combination cannot be built")]
    [InlineData("why", "The combination cannot be built")]
    [InlineData("impact", "Something changes")]
    [InlineData("draft", "Nothing was written")]
    [InlineData("register", "The register cannot be read")]
    [InlineData("preview", "Not used")]
    [InlineData("schema", "Not used")]
    public void Help_OfACommand_SaysWhatTheExitCodesMean(string command, string one)
    {
        var run = BuiltProgram.Run(_base.Path, command, "--help");
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Matches($"\nEXIT CODES:\n    0    [^\n]+\n    1    [^\n]*{one}[^\n]*\n    2    [^\n]+\n$", run.Output);
    }

    [Fact]
    public void Site_IntoALog_SaysWhatBeginsAndWhatCameOfIt()
    {
        using var elsewhere = new TemporaryFolder();
        var run = BuiltProgram.Run(elsewhere.Path, "site", _base.Path, "--to", "made");
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Matches("^Rendering [0-9]+ guides into made\n[0-9]+ guides, [0-9]+ pages: open made[^\n]+\n$", run.Output);

        var part = BuiltProgram.Run(elsewhere.Path, "site", _base.Path, "--to", "part", "--shard", "2/1000");
        Assert.Equal((0, ""), (part.Exit, part.Error));
        Assert.Matches("^Rendering (1 guide|0 guides), part 2 of 1000, into part\n[^\n]+\n$", part.Output);
    }

    [Fact]
    public void Sheet_NotBuildable_Exits1WithTheRuleAndTheNearestWay()
    {
        var run = BuiltProgram.Run(_base.Path, "sheet", "hazel-90", "alder-16", "gearbox=donor", "-k", ".");
        Assert.Equal((1, ""), (run.Exit, run.Error));
        Assert.Contains("The donor's gearbox meets the early subframe (no-donor-box-early, rules/front/no-donor-box-early.yaml:2:8)\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("      The early subframe leaves no room for the donor's gearbox.\n      The nearest way: gearbox=keep.\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheet_FilesThatCannotBeRead_Exits1WithTheFindings()
    {
        _base.Write("choices/gearbox.yaml", "title: [\n");
        var run = BuiltProgram.Run(_base.Path, "sheet", "hazel-90", "alder-16", "--base", ".", "--to", "sheet.txt");
        Assert.Equal((1, ""), (run.Exit, run.Output));
        Assert.Contains("choices/gearbox.yaml:", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_base.Path, "sheet.txt")));
    }

    [Fact]
    public void Why_Overridden_NamesTheOverridingRule()
    {
        var run = BuiltProgram.Run(_base.Path, "why", "hazel-93", "alder-14", "gearbox=donor", "front-mount", "--base", ".");
        Assert.Equal((0, ""), (run.Exit, run.Error));
        Assert.Contains("front-mount is overridden by front-mount-late", run.Output, StringComparison.Ordinal);
    }
}
