using System.Text;
using BenchmarkDotNet.Attributes;
using Swapwright.Source;

namespace Swapwright.Benchmarks.Functions;

/// <summary>The longest rule of the drawn base, in the plain form and with the line ends of Windows, which are outside it.</summary>
public class Reading
{
    private const string Name = "rules/rule.yaml";
    private byte[] _plain = [];
    private byte[] _other = [];

    [GlobalSetup]
    public void Setup()
    {
        var text = SmallBase.Drawn.Files.Where(file => file.Key.StartsWith("rules/", StringComparison.Ordinal)).MaxBy(file => file.Value.Length).Value;
        var other = text.ReplaceLineEndings("\r\n");
        if (!IsPlain(text) || IsPlain(other))
        {
            throw new InvalidOperationException("the two texts no longer take the two ways");
        }

        (_plain, _other) = (Encoding.UTF8.GetBytes(text), Encoding.UTF8.GetBytes(other));
    }

    [Benchmark(Description = "read a rule in the plain form")]
    public object? Plain() => SourceReader.Parse(Name, _plain).Root;

    [Benchmark(Description = "read the same rule by the YAML parser")]
    public object? ByParser() => SourceReader.Parse(Name, _other).Root;

    private static bool IsPlain(string text) => PlainTree.Read(Name, text, new LineIndex(text), SourceLimits.Default) is not null;
}
