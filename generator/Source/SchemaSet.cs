using System.Collections.Immutable;
using System.Reflection;
using NJsonSchema;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>
/// The JSON Schemas by kind of file: the same files that a contributor's editor reads. Each is loaded when the first file
/// of its kind is validated, because loading takes longer than validating.
/// </summary>
public sealed class SchemaSet
{
    private const string Suffix = ".schema.json";
    private const string ResourcePrefix = "schema/";

    private readonly ImmutableSortedDictionary<string, Lazy<JsonSchema>> _byKind;

    private SchemaSet(IEnumerable<string> kinds, Func<string, string> textOf)
    {
        var loader = new SchemaLoader(textOf);
        _byKind = kinds.ToImmutableSortedDictionary(
            kind => kind,
            kind => new Lazy<JsonSchema>(() => loader.Load(kind + Suffix)),
            StringComparer.Ordinal);
    }

    /// <summary>The schemas that travel inside the program.</summary>
    public static SchemaSet Embedded { get; } = FromResources(typeof(SchemaSet).Assembly);

    /// <summary>In ordinal order.</summary>
    public IReadOnlyCollection<string> Kinds => [.. _byKind.Keys];

    /// <summary>Every <c>KIND.schema.json</c> directly in a folder.</summary>
    public static SchemaSet FromFolder(string folder) => new(
        Directory.EnumerateFiles(folder, "*" + Suffix).Select(file => Path.GetFileName(file)[..^Suffix.Length]),
        file => File.ReadAllText(Path.Combine(folder, file)));

    /// <summary>What keeps a file from the form of its kind, each cause once, in order of place. Empty for a file that could not be read.</summary>
    /// <exception cref="InvalidOperationException">There is no schema for the file's kind.</exception>
    public ImmutableArray<Finding> Validate(SourceFile file)
    {
        if (!_byKind.TryGetValue(file.Kind, out var schema))
        {
            throw new InvalidOperationException($"there is no schema for the kind `{file.Kind}`");
        }

        if (file.Root is not { } root)
        {
            return [];
        }

        var mirror = JsonMirror.Of(root);
        var errors = schema.Value.Validate(mirror.Token);
        return errors.Count == 0 ? [] : new SchemaReport(mirror).Findings(errors, SourceLimits.Default.MaxFindingsPerFile);
    }

    private static SchemaSet FromResources(Assembly assembly) => new(
        assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(ResourcePrefix, StringComparison.Ordinal) && name.EndsWith(Suffix, StringComparison.Ordinal))
            .Select(name => name[ResourcePrefix.Length..^Suffix.Length])
            .Where(kind => !kind.Contains('/', StringComparison.Ordinal)),
        file =>
        {
            using var stream = assembly.GetManifestResourceStream(ResourcePrefix + file) ?? throw new FileNotFoundException($"there is no schema `{file}`");
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd();
        });
}
