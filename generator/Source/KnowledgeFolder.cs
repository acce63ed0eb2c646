using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>Reads a knowledge base from a folder.</summary>
public static class KnowledgeFolder
{
    /// <summary>
    /// Reads every file and gathers what is wrong with any of them. Symbolic links are not followed: nothing outside the
    /// folder is ever read. Files are read one after the other because the YAML parser gains nothing from threads.
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
        var files = ImmutableArray.CreateBuilder<SourceFile>(walk.Found.Count);
        var total = 0L;
        foreach (var found in walk.Found)
        {
            cancellation.ThrowIfCancellationRequested();
            var length = LengthOf(found);
            if (total + length > bounds.MaxTotalBytes)
            {
                findings.Add(new Finding(FindingKinds.Schema, string.Create(CultureInfo.InvariantCulture, $"the knowledge base is larger than {bounds.MaxTotalBytes} bytes; this file and the ones after it are not read"), Place.Of(found.Path))
                {
                    Mend = "Remove what is not needed, or split the knowledge base.",
                });
                break;
            }

            total += length;
            var (file, faults) = ReadOne(found, length, bounds);
            files.Add(file);
            findings.AddRange(faults);
        }

        findings.AddRange(walk.Missing());
        DoubleIds(files, findings);
        return new SourceTree(folder, files.DrainToImmutable(), [.. findings.OrderBy(finding => finding.Place).ThenBy(finding => finding.Message, StringComparer.Ordinal)]) { Pictures = [.. walk.Pictures.Order(StringComparer.Ordinal)] };
    }

    /// <summary>A file that has gone since the folder was listed counts as one byte, so that opening it gives the finding.</summary>
    private static long LengthOf(FoundFile found)
    {
        try
        {
            return found.Info.Length;
        }
        catch (IOException)
        {
            return 1;
        }
    }

    private static (SourceFile File, ImmutableArray<Finding> Findings) ReadOne(FoundFile found, long length, SourceLimits limits)
    {
        // By length, before opening: a named pipe has none and would be waited for without end.
        if (length == 0)
        {
            return SourceReader.ReadFile(found.Path, found.Kind, found.Id, [], limits);
        }

        var findings = new FindingList(found.Path, limits.MaxFindingsPerFile);
        if (length > limits.MaxFileBytes)
        {
            SourceDecoder.TooLarge(limits, findings);
        }
        else
        {
            try
            {
                return SourceReader.ReadFile(found.Path, found.Kind, found.Id, File.ReadAllBytes(found.Info.FullName), limits);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                findings.Add(findings.WholeFile, "the file cannot be opened", "Give it read permission.");
            }
        }

        return (new SourceFile(found.Path, found.Kind, found.Id, string.Empty, null, null, 0), findings.ToImmutable());
    }

    private static void DoubleIds(ImmutableArray<SourceFile>.Builder files, List<Finding> findings)
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
