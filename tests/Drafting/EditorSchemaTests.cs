using System.Text.Json;
using Swapwright.Drafting;
using Swapwright.Findings;
using Swapwright.Source;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Drafting;

public sealed class EditorSchemaTests
{
    /// <summary>An editor that marks what the check accepts would be worse than none.</summary>
    [Theory]
    [InlineData("new")]
    [InlineData("shipped")]
    public void All_WithTheIdsOfABase_AcceptEveryFileOfIt(string which)
    {
        using var copy = DraftedBases.Copy(which);
        var proof = Proof.Of(Path.Combine(copy.Path, "swap-kb"), examine: false);
        EditorSchemas.Write(proof.Base, Path.Combine(copy.Path, "schema"));
        var schemas = SchemaSet.FromFolder(Path.Combine(copy.Path, "schema"));
        Assert.Empty(proof.Tree.Files.Where(file => file.Root is not null).SelectMany(file => schemas.Judge(file)).Select(finding => $"{finding.Place}: {finding.Message}"));
    }

    [Fact]
    public void Write_AFolderOfSomebodyElse_IsRefused()
    {
        using var copy = DraftedBases.Copy("new");
        var kb = Proof.Of(Path.Combine(copy.Path, "swap-kb"), examine: false).Base;
        copy.Write("schema/mine.json", "{}");
        Assert.Throws<DraftProblemException>(() => EditorSchemas.Write(kb, Path.Combine(copy.Path, "schema")));
    }

    /// <summary>Through the language server that editors run.</summary>
    [Fact]
    public void LanguageServer_AnEngine_CompletesAFactAndMarksAMistake()
    {
        using var copy = DraftedBases.Copy("new");
        EditorSchemas.Write(Proof.Of(Path.Combine(copy.Path, "swap-kb"), examine: false).Base, Path.Combine(copy.Path, "schema"));
        var path = Path.Combine(copy.Path, "swap-kb/engines/second.yaml");
        copy.Write("swap-kb/engines/second.yaml", "# yaml-language-server: $schema=../../schema/engine.schema.json\ntitle: Second\nfacts:\n  emission-level: stage-9\n  pow\n");
        using var server = new LanguageServer(Path.Combine(Reading.Repository(), "tests/npm/node_modules/yaml-language-server/bin/yaml-language-server"), copy.Path);
        server.Open(path);

        var offered = server.Complete(path, line: 4, column: 5).Select(item => item.GetProperty("label").GetString());
        Assert.Contains("power", offered);

        copy.Write("swap-kb/engines/third.yaml", File.ReadAllText(path).Replace("  pow\n", "  power: 80\n", StringComparison.Ordinal));
        server.Open(Path.Combine(copy.Path, "swap-kb/engines/third.yaml"));
        var mistake = Assert.Single(server.Diagnostics("third.yaml"));
        Assert.Equal(3, mistake.GetProperty("range").GetProperty("start").GetProperty("line").GetInt32());
        Assert.Contains("stage-1", mistake.GetProperty("message").GetString(), StringComparison.Ordinal);

        copy.Write("swap-kb/rules/mounts/second.yaml", "# yaml-language-server: $schema=../../../schema/rule.schema.json\ntitle: Second\nwhen: {donor.pwer: 3}\nthen:\n  answers:\n    radiator: {source: new, treatment: as-is, part: mount-plte}\n");
        server.Open(Path.Combine(copy.Path, "swap-kb/rules/mounts/second.yaml"));
        Assert.Equal([2, 5], server.Diagnostics("rules/mounts/second.yaml").Select(one => one.GetProperty("range").GetProperty("start").GetProperty("line").GetInt32()).Order());
    }
}
