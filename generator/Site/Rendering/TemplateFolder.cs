using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Swapwright.Site.Output;
using Swapwright.Source;

namespace Swapwright.Site.Rendering;

/// <summary>
/// Templates, styles, scripts and pictures that a base brings along in <c>site-template/</c>. They are read within bounds and
/// from that folder alone. A template is markup: what it says reaches the page as it stands, so it is to be reviewed like code.
/// </summary>
public sealed partial class TemplateFolder
{
    private const int MostFiles = 500;
    private const int MostBytes = 2 * 1024 * 1024;
    private const int MostTemplateBytes = 128 * 1024;

    /// <summary>A block costs the parser some stack, and it has to close every one it opens.</summary>
    private const int MostBlocks = 400;

    private static readonly ImmutableArray<string> s_extensions = [".sbn-html", ".md", ".css", ".js", ".svg", ".png", ".webp", ".woff2"];

    private readonly string _shown;

    private TemplateFolder(string shown, IReadOnlyList<SiteFile> files)
    {
        _shown = shown;
        Files = files;
    }

    public IReadOnlyList<SiteFile> Files { get; }

    /// <summary>A file of the folder as a reader of a message can open it.</summary>
    public string NameOf(string path) => $"{_shown}/{path}";

    /// <summary>The folder of a base; empty where it has none.</summary>
    /// <exception cref="TemplateException">Something in the folder does not belong there, or there is too much of it.</exception>
    public static TemplateFolder Of(string knowledgeBase)
    {
        var root = new DirectoryInfo(Path.Combine(knowledgeBase, KnowledgeLayout.TemplateFolder));
        var shown = Path.Combine(knowledgeBase, KnowledgeLayout.TemplateFolder).Replace('\\', '/');
        var files = new List<SiteFile>();
        if (root.Exists)
        {
            Refuse(root, shown);
            Read(root, "", shown, files);
        }

        return new TemplateFolder(shown, files);
    }

    private static void Read(DirectoryInfo folder, string path, string shown, List<SiteFile> files)
    {
        try
        {
            foreach (var entry in folder.EnumerateFileSystemInfos().OrderBy(entry => entry.Name, StringComparer.Ordinal))
            {
                if (KnowledgeLayout.IsAside(entry.Name))
                {
                    continue;
                }

                var inner = path + entry.Name;
                Refuse(entry, $"{shown}/{inner}");
                if (entry is DirectoryInfo below)
                {
                    Read(below, inner + "/", shown, files);
                }
                else
                {
                    files.Add(One((FileInfo)entry, inner, $"{shown}/{inner}", files.Count));
                }
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw Fault(shown + "/" + path, $"cannot be read: {problem.Message}");
        }
    }

    private static SiteFile One(FileInfo file, string path, string shown, int before)
    {
        var isTemplate = path.EndsWith(s_extensions[0], StringComparison.Ordinal);
        var limit = isTemplate ? MostTemplateBytes : MostBytes;
        var fault = before >= MostFiles ? string.Create(CultureInfo.InvariantCulture, $"is one more than the {MostFiles} files that are read")
            : !SitePath.IsPlain(path) ? "has a name that a site cannot have"
            : !s_extensions.Any(extension => path.EndsWith(extension, StringComparison.Ordinal)) ? $"is of no kind that a site is made of: {string.Join(", ", s_extensions)}"
            : file.Length > limit ? string.Create(CultureInfo.InvariantCulture, $"is larger than {limit} bytes")
            : null;
        if (fault is not null)
        {
            throw Fault(shown, fault);
        }

        // By length, before opening: a named pipe has none and would be waited for without end.
        var bytes = file.Length == 0 ? [] : File.ReadAllBytes(file.FullName);
        return isTemplate && BlockWord().Count(Encoding.UTF8.GetString(bytes)) > MostBlocks
            ? throw Fault(shown, string.Create(CultureInfo.InvariantCulture, $"opens more than {MostBlocks} blocks; divide it into partials"))
            : new SiteFile(path, bytes);
    }

    private static void Refuse(FileSystemInfo entry, string shown)
    {
        if (entry.Attributes.HasFlag(FileAttributes.ReparsePoint))
        {
            throw Fault(shown, "is a symbolic link: only what lies in the folder is read");
        }
    }

    private static TemplateException Fault(string shown, string words) => new(shown, 1, 1, words);

    [GeneratedRegex(@"\b(?:if|for|while|case|capture|func|do|wrap|with|tablerow)\b|[({\[]{3}", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex BlockWord();
}
