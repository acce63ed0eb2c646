using System.Collections.Immutable;
using System.Reflection;
using NJsonSchema;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>
/// The JSON Schemas by kind of file: the same files that a contributor's editor reads. Each is loaded when the first file
/// of its kind is not found sound by its <see cref="QuickForm"/>, because loading takes longer than validating.
/// </summary>
public sealed class SchemaSet
{
    private const string Suffix = ".schema.json";
    private const string ResourcePrefix = "schema/";

    private readonly ImmutableSortedDictionary<string, Lazy<JsonSchema>> _byKind;
    private readonly ImmutableSortedDictionary<string, Lazy<QuickForm>> _quick;

    private SchemaSet(IEnumerable<string> kinds, Func<string, string> textOf)
    {
        var loader = new SchemaLoader(textOf);
        _byKind = kinds.ToImmutableSortedDictionary(
            kind => kind,
            kind => new Lazy<JsonSchema>(() => loader.Load(kind + Suffix)),
            StringComparer.Ordinal);
        _quick = _byKind.Keys.ToImmutableSortedDictionary(
            kind => kind,
            // A pool of its own for each kind: what is read lazily on one thread must not be shared with another.
            kind => new Lazy<QuickForm>(() => new QuickForms(textOf).Load(kind + Suffix)),
            StringComparer.Ordinal);
    }

    /// <summary>The schemas that travel inside the program.</summary>
    public static SchemaSet Embedded { get; } = FromResources(typeof(SchemaSet).Assembly);

    /// <summary>Kind and text of the schemas that travel inside the program, in order of kind.</summary>
    public static IEnumerable<(string Kind, string Text)> EmbeddedTexts() => Embedded.Kinds.Select(kind => (kind, ReadResource(typeof(SchemaSet).Assembly, kind + Suffix)));

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
        if (!_byKind.ContainsKey(file.Kind))
        {
            throw new InvalidOperationException($"there is no schema for the kind `{file.Kind}`");
        }

        return file.Root is null || _quick[file.Kind].Value.Accepts(file.Root) ? [] : Judge(file);
    }

    /// <summary>Whether a file is found sound without the validator; false says nothing.</summary>
    internal bool Accepts(SourceFile file) => file.Root is { } root && _quick[file.Kind].Value.Accepts(root);

    /// <summary>What the validator says.</summary>
    internal ImmutableArray<Finding> Judge(SourceFile file)
    {
        var schema = _byKind[file.Kind];
        var mirror = JsonMirror.Of(file.Root!);
        var errors = schema.Value.Validate(mirror.Token);
        return errors.Count == 0 ? [] : new SchemaReport(mirror).Findings(errors, SourceLimits.Default.MaxFindingsPerFile);
    }

    private static SchemaSet FromResources(Assembly assembly) => new(
        assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(ResourcePrefix, StringComparison.Ordinal) && name.EndsWith(Suffix, StringComparison.Ordinal))
            .Select(name => name[ResourcePrefix.Length..^Suffix.Length])
            .Where(kind => !kind.Contains('/', StringComparison.Ordinal)),
        file => ReadResource(assembly, file));

    private static string ReadResource(Assembly assembly, string file)
    {
        using var stream = assembly.GetManifestResourceStream(ResourcePrefix + file) ?? throw new FileNotFoundException($"there is no schema `{file}`");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
