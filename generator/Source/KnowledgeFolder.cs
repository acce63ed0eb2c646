using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>Reads a knowledge base from a folder.</summary>
public static class KnowledgeFolder
{
    /// <summary>
    /// Reads every file and gathers what is wrong with any of them. Symbolic links are not followed: nothing outside the
    /// folder is ever read. Files are read side by side and kept in the order of their paths.
    /// </summary>
    /// <param name="folder">Has to exist; the caller decides what a missing folder means.</param>
    /// <exception cref="DirectoryNotFoundException">The folder does not exist.</exception>
    public static SourceTree Read(string folder, SourceLimits? limits = null, CancellationToken cancellation = default)
    {
        var bounds = limits ?? SourceLimits.Default;
        if (!Directory.Exists(folder))
        {
            throw new DirectoryNotFoundException($"the folder `{folder}` does not exist");
        }

        var walk = new FolderWalk(bounds, cancellation);
        walk.Visit(new DirectoryInfo(folder));
        walk.Found.Sort((left, right) => string.CompareOrdinal(left.Path, right.Path));

        var findings = new List<Finding>(walk.Findings);
        var (taken, bytes) = Within(walk.Found, bounds, findings);
        Headroom.Take(bytes);
        var read = new (SourceFile File, ImmutableArray<Finding> Findings)[taken.Count];
        Parallel.For(0, read.Length, new ParallelOptions { CancellationToken = cancellation }, at => read[at] = ReadOne(taken[at], FileContent.Of(taken[at], bounds), bounds));
        findings.AddRange(read.SelectMany(one => one.Findings));
        var files = read.Select(one => one.File).ToImmutableArray();
        findings.AddRange(walk.Missing());
        DoubleIds(files, findings);
        return new SourceTree(folder, files, [.. findings.OrderBy(finding => finding.Place).ThenBy(finding => finding.Message, StringComparer.Ordinal)]);
    }

    /// <summary>The files up to the one with which all of them together become too large.</summary>
    private static (List<FoundFile> Files, long Bytes) Within(List<FoundFile> found, SourceLimits limits, List<Finding> findings)
    {
        var total = 0L;
        for (var at = 0; at < found.Count; at++)
        {
            total += FileContent.LengthOf(found[at]);
            if (total > limits.MaxTotalBytes)
            {
                findings.Add(new Finding(FindingKinds.Schema, string.Create(CultureInfo.InvariantCulture, $"the knowledge base is larger than {limits.MaxTotalBytes} bytes; this file and the ones after it are not read"), Place.Of(found[at].Path))
                {
                    Mend = "Remove what is not needed, or split the knowledge base.",
                });
                return (found[..at], limits.MaxTotalBytes);
            }
        }

        return (found, total);
    }

    private static (SourceFile File, ImmutableArray<Finding> Findings) ReadOne(FoundFile found, FileContent content, SourceLimits limits)
    {
        if (content.Bytes is { } bytes)
        {
            return SourceReader.ReadFile(found.Path, found.Kind, found.Id, bytes, limits);
        }

        var findings = new FindingList(found.Path, limits.MaxFindingsPerFile);
        if (content.Length > limits.MaxFileBytes)
        {
            SourceDecoder.TooLarge(limits, findings);
        }
        else
        {
            findings.Add(findings.WholeFile, "the file cannot be opened", "Give it read permission.");
        }

        return (new SourceFile(found.Path, found.Kind, found.Id, string.Empty, null, null, 0), findings.ToImmutable());
    }

    private static void DoubleIds(ImmutableArray<SourceFile> files, List<Finding> findings)
    {
        var first = new Dictionary<(string Kind, string Id), SourceFile>();
        foreach (var file in files)
        {
            if (first.TryGetValue((file.Kind, file.Id), out var earlier))
            {
                findings.Add(new Finding(FindingKinds.Schema, $"the id `{file.Id}` is used twice for the kind `{file.Kind}`", Place.Of(file.Path))
                {
                    Related = [new RelatedPlace("it is used here as well", Place.Of(earlier.Path))],
                    Mend = "Rename one of the two files.",
                });
            }
            else
            {
                first.Add((file.Kind, file.Id), file);
            }
        }
    }
}
