using System.Collections.Immutable;
using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Tests.Source;

/// <summary>Short ways to read text in tests.</summary>
internal static class Reading
{
    public const string Path = "rules/one.yaml";

    public static MappingNode Root(string yaml)
    {
        var (root, findings) = Parse(yaml);
        Assert.Empty(findings);
        return Assert.IsType<MappingNode>(root);
    }

    public static (MappingNode? Root, ImmutableArray<Finding> Findings) Parse(string yaml, SourceLimits? limits = null) =>
        SourceReader.Parse(Path, Encoding.UTF8.GetBytes(yaml), limits);

    public static Finding Single(string yaml, SourceLimits? limits = null) => Assert.Single(Parse(yaml, limits).Findings);

    public static SourceFile File(string kind, string text) => SourceReader.ReadFile(Path, kind, "one", Encoding.UTF8.GetBytes(text), SourceLimits.Default).File;

    /// <summary>A place as <c>line:column-line:column</c>.</summary>
    public static string Span(Place place) => FormattableString.Invariant($"{place.Line}:{place.Column}-{place.EndLine}:{place.EndColumn}");

    public static string Repository()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(System.IO.Path.Combine(folder.FullName, "Swapwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("the tests do not lie inside the repository");
    }
}
