using System.Text;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Binding;
using Swapwright.Source;

namespace Swapwright.Tests.Rules;

/// <summary>A knowledge base whose files are kept in memory: read by the reader that reads folders, without a folder.</summary>
internal sealed class MemoryBase
{
    private readonly SortedDictionary<string, string> _files = new(StringComparer.Ordinal);

    public string this[string path]
    {
        get => _files[path];
        set => _files[path] = value;
    }

    public IEnumerable<KeyValuePair<string, string>> Files => _files;

    /// <returns>Whether there was such a file.</returns>
    public bool Remove(string path) => _files.Remove(path);

    public SourceTree Tree()
    {
        var read = _files.Select(file =>
        {
            var slash = file.Key.IndexOf('/', StringComparison.Ordinal);
            var kind = slash < 0 ? KnowledgeLayout.TopFiles[file.Key] : KnowledgeLayout.Folders[file.Key[..slash]];
            return SourceReader.ReadFile(file.Key, kind, Path.GetFileNameWithoutExtension(file.Key), Encoding.UTF8.GetBytes(file.Value), SourceLimits.Default);
        }).ToList();
        return new SourceTree("memory", [.. read.Select(one => one.File)], [.. read.SelectMany(one => one.Findings)]);
    }

    /// <summary>The bound base; the test fails where anything was wrong with the files.</summary>
    public KnowledgeBase Bind()
    {
        var tree = Tree();
        Assert.Empty(tree.Findings);
        var (kb, findings) = KnowledgeBinder.Bind(tree);
        Assert.Empty(findings.Select(finding => $"{finding.Place}: {finding.Message}"));
        return kb;
    }

    /// <summary>Writes the files under a folder.</summary>
    public void WriteTo(string folder)
    {
        foreach (var (path, text) in _files)
        {
            var file = Path.Combine(folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
        }
    }
}
