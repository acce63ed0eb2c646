using System.Collections.Concurrent;
using System.IO.Enumeration;
using System.Runtime.ExceptionServices;

namespace Swapwright.Site.Output;

/// <summary>
/// The tree of the site before the previous one, or what a run that was killed had begun: most of its files are the files of the previous
/// site under a second name, and stay where they are. What is found in it is not trusted: a link is never followed, a file is kept only by
/// its stamp, and what the new site does not have is taken away at the end.
/// </summary>
/// <remarks>Files share their content with those of the previous site: one that is to change is removed first, never written over.</remarks>
internal sealed class ReusedTree(string root)
{
    // The guides of a chassis lie in a folder two levels down: so many that workers may share them out.
    private const int SharedOutDepth = 2;

    private static readonly EnumerationOptions s_everything = new() { AttributesToSkip = FileAttributes.None };

    private readonly HashSet<string> _folders = new(StringComparer.Ordinal) { root };

    /// <summary>Whether a file lies there already as its stamp says.</summary>
    /// <remarks>Of a disk that tells times by the second, two files of two runs may have one stamp; there nothing is known again.</remarks>
    public static bool Has(string file, FileStamp stamp) => stamp.Time % TimeSpan.TicksPerSecond != 0 && FileStamp.Of(file) == stamp;

    /// <summary>Takes away whatever has the name of a file that is to be made.</summary>
    public static void MakeRoom(string file)
    {
        if (new DirectoryInfo(file) is { Exists: true, LinkTarget: null } folder)
        {
            folder.Delete(recursive: true);
        }
        else
        {
            File.Delete(file);
        }
    }

    /// <summary>Makes a folder below the root where there is none; a link or a file in the place of one of its folders goes. Any number of workers may ask at once.</summary>
    public void MakeFolder(string folder)
    {
        lock (_folders)
        {
            if (!_folders.Add(folder))
            {
                return;
            }

            MakeFolder(Path.GetDirectoryName(folder)!);
            if (new DirectoryInfo(folder) is not { Exists: true, LinkTarget: null })
            {
                File.Delete(folder);
                Directory.CreateDirectory(folder);
            }
        }
    }

    /// <summary>Takes away what the new site does not have.</summary>
    /// <param name="written">Paths of its files; the mark of the folder stays besides.</param>
    /// <exception cref="IOException">Something cannot be taken away; or <see cref="UnauthorizedAccessException"/>.</exception>
    public void RemoveOthers(ConcurrentDictionary<string, string> written)
    {
        try
        {
            RemoveOthers(root, "", 0, written);
        }
        catch (AggregateException several)
        {
            // Workers met the same obstacle; callers know it by its own type.
            ExceptionDispatchInfo.Throw(several.Flatten().InnerExceptions[0]);
        }
    }

    // True where nothing is left in the folder.
    private static bool RemoveOthers(string folder, string prefix, int depth, ConcurrentDictionary<string, string> written)
    {
        var known = written.GetAlternateLookup<ReadOnlySpan<char>>();
        var kept = 0;
        bool IsOther(ref FileSystemEntry entry)
        {
            if (IsFolder(ref entry) || !(IsKnown(prefix, entry.FileName, known) || (depth == 0 && entry.FileName.SequenceEqual(OwnFolder.Mark))))
            {
                return true;
            }

            kept++;
            return false;
        }

        var others = new FileSystemEnumerable<(string Name, bool IsFolder)>(folder, static (ref entry) => (entry.FileName.ToString(), IsFolder(ref entry)), s_everything) { ShouldIncludePredicate = IsOther }.ToList();
        void Remove((string Name, bool IsFolder) other)
        {
            var path = Path.Combine(folder, other.Name);
            if (!other.IsFolder)
            {
                File.Delete(path);
            }
            else if (RemoveOthers(path, $"{prefix}{other.Name}/", depth + 1, written))
            {
                Directory.Delete(path);
            }
            else
            {
                Interlocked.Increment(ref kept);
            }
        }

        if (depth < SharedOutDepth)
        {
            Parallel.ForEach(others, Remove);
        }
        else
        {
            others.ForEach(Remove);
        }

        return kept == 0;
    }

    private static bool IsFolder(ref FileSystemEntry entry) => entry.IsDirectory && !entry.Attributes.HasFlag(FileAttributes.ReparsePoint);

    private static bool IsKnown(string prefix, ReadOnlySpan<char> name, ConcurrentDictionary<string, string>.AlternateLookup<ReadOnlySpan<char>> known)
    {
        Span<char> path = stackalloc char[SitePath.LongestPath];
        if (prefix.Length + name.Length > path.Length)
        {
            return false;
        }

        prefix.CopyTo(path);
        name.CopyTo(path[prefix.Length..]);
        path = path[..(prefix.Length + name.Length)];
        return known.TryGetValue(path, out var exact) && path.SequenceEqual(exact);
    }
}
