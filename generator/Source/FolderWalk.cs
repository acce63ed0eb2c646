using System.Globalization;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

internal sealed record FoundFile(string Path, string Kind, string Id, FileInfo Info);

/// <summary>Finds the files of a knowledge base, and says what does not belong there.</summary>
internal sealed class FolderWalk(SourceLimits limits, CancellationToken cancellation)
{
    private readonly HashSet<string> _topNames = new(StringComparer.Ordinal);
    private int _seen;
    private bool _full;

    public List<FoundFile> Found { get; } = [];

    public List<Finding> Findings { get; } = [];

    public void Visit(DirectoryInfo folder)
    {
        foreach (var entry in Entries(folder, string.Empty))
        {
            _topNames.Add(entry.Name);
            if (Skips(entry, entry.Name))
            {
                continue;
            }

            if (entry is DirectoryInfo inner)
            {
                TopFolder(inner);
            }
            else if (KnowledgeLayout.TopFiles.TryGetValue(entry.Name, out var kind))
            {
                Found.Add(new FoundFile(entry.Name, kind, kind, (FileInfo)entry));
            }
            else
            {
                Report(entry.Name, $"`{entry.Name}` is no file of a knowledge base", Unknown(entry.Name, KnowledgeLayout.TopFiles.Keys, "file"));
            }
        }
    }

    /// <summary>The files that a knowledge base needs and that are not there, not even as something that was refused.</summary>
    public IEnumerable<Finding> Missing() => KnowledgeLayout.Required
        .Where(name => !_topNames.Contains(name))
        .Select(name => new Finding(FindingKinds.Schema, $"the file `{name}` is missing", Place.Of(name)) { Mend = $"Add `{name}` to the knowledge base." });

    private void TopFolder(DirectoryInfo folder)
    {
        if (KnowledgeLayout.Folders.TryGetValue(folder.Name, out var kind))
        {
            Descend(folder, folder.Name, 1, kind);
        }
        else if (folder.Name != KnowledgeLayout.TemplateFolder)
        {
            Report(folder.Name, $"`{folder.Name}` is no folder of a knowledge base", Unknown(folder.Name, KnowledgeLayout.Folders.Keys, "folder"));
        }
    }

    private void Descend(DirectoryInfo folder, string path, int depth, string kind)
    {
        if (depth > limits.MaxFolderDepth)
        {
            Report(path, string.Create(CultureInfo.InvariantCulture, $"folders are nested deeper than {limits.MaxFolderDepth}"), "Move the files further up.");
            return;
        }

        foreach (var entry in Entries(folder, path))
        {
            var inner = path + "/" + entry.Name;
            if (Skips(entry, inner))
            {
                continue;
            }

            if (entry is DirectoryInfo below)
            {
                Descend(below, inner, depth + 1, kind);
            }
            else
            {
                Entity((FileInfo)entry, inner, kind);
            }
        }
    }

    private void Entity(FileInfo file, string path, string kind)
    {
        var extension = KnowledgeLayout.ExtensionOf(kind);
        if (!string.Equals(file.Extension, extension, StringComparison.Ordinal))
        {
            Report(path, $"a file of the kind `{kind}` must end in `{extension}`", $"Rename the file, or move it out of the folder.");
            return;
        }

        var id = Path.GetFileNameWithoutExtension(file.Name);
        if (!KnowledgeLayout.IsId(id))
        {
            Report(path, $"the file name `{id}` is no id", "Use small letters a to z and digits, in words joined by single hyphens.");
            return;
        }

        Found.Add(new FoundFile(path, kind, id, file));
    }

    private FileSystemInfo[] Entries(DirectoryInfo folder, string path)
    {
        cancellation.ThrowIfCancellationRequested();
        try
        {
            var entries = folder.EnumerateFileSystemInfos("*", new EnumerationOptions { AttributesToSkip = FileAttributes.None }).Take(limits.MaxFiles + 1).ToArray();
            Array.Sort(entries, (left, right) => string.CompareOrdinal(left.Name, right.Name));
            return entries;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Report(path.Length == 0 ? "." : path, "the folder cannot be opened", "Give it read permission.");
            return [];
        }
    }

    private bool Skips(FileSystemInfo entry, string path)
    {
        if (_full || KnowledgeLayout.IsAside(entry.Name))
        {
            return true;
        }

        if (++_seen > limits.MaxFiles)
        {
            _full = true;
            Report(path, string.Create(CultureInfo.InvariantCulture, $"the knowledge base has more than {limits.MaxFiles} files; this one and the ones after it are not read"), "Split the knowledge base.");
            return true;
        }

        if (entry.Attributes.HasFlag(FileAttributes.ReparsePoint))
        {
            Report(path, "a symbolic link is refused: only what lies in the folder is read", "Put the file itself in place of the link.");
            return true;
        }

        return false;
    }

    private static string Unknown(string name, IEnumerable<string> known, string what)
    {
        var names = known.ToList();
        var list = string.Join(", ", names.Select(one => $"`{one}`"));
        return NearestName.Of(name, names) is { } near ? $"Rename it to `{near}`, or remove it; known {what}s are {list}." : $"Remove it; known {what}s are {list}.";
    }

    private void Report(string path, string message, string mend) => Findings.Add(new Finding(FindingKinds.Schema, message, Place.Of(path)) { Mend = mend });
}
