using System.Globalization;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Site;

/// <summary>The parts of a site, laid over one another, against the site that is rendered at once.</summary>
public sealed class ShardTests : IDisposable
{
    private const string Mark = Swapwright.Site.Output.SiteFolder.Mark;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    public void Render_PartsLaidOverOneAnother_AreTheWholeSite(int parts)
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder("workshop"));
        Render(proof, "whole", Shard.Whole);
        var whole = Files("whole");
        var joined = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        for (var part = 1; part <= parts; part++)
        {
            Render(proof, string.Create(CultureInfo.InvariantCulture, $"part-{part}"), new Shard(part, parts));
            foreach (var (path, bytes) in Files(string.Create(CultureInfo.InvariantCulture, $"part-{part}")))
            {
                Assert.True(joined.TryAdd(path, bytes), $"{path} is in two parts");
            }
        }

        Assert.Equal(whole.Keys.Order(StringComparer.Ordinal), joined.Keys.Order(StringComparer.Ordinal));
        Assert.All(whole, file => Assert.Equal(file.Value, joined[file.Key]));
    }

    [Theory]
    [InlineData("1/1", 1, 1)]
    [InlineData("2/5", 2, 5)]
    [InlineData("1000/1000", 1000, 1000)]
    public void Parse_PartOfAll_IsUnderstood(string text, int number, int of) => Assert.Equal(new Shard(number, of), Shard.Parse(text));

    [Theory]
    [InlineData("")]
    [InlineData("1")]
    [InlineData("0/2")]
    [InlineData("3/2")]
    [InlineData("1/1001")]
    [InlineData("-1/2")]
    [InlineData(" 1/2")]
    [InlineData("1/2/3")]
    [InlineData("1/x")]
    public void Parse_AnythingElse_IsNone(string text) => Assert.Null(Shard.Parse(text));

    private void Render(Proof proof, string name, Shard shard) => SiteBuilder.Render(proof, Path.Combine(_folder.Path, name), BuiltIn.Templates, shard: shard);

    private Dictionary<string, byte[]> Files(string name)
    {
        var root = Path.Combine(_folder.Path, name);
        return Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories)
            .Select(path => (Path: Path.GetRelativePath(root, path), Bytes: File.ReadAllBytes(path)))
            .Where(file => file.Path != Mark)
            .ToDictionary(file => file.Path, file => file.Bytes, StringComparer.Ordinal);
    }
}
