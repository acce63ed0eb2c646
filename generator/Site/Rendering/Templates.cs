using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Reflection;
using System.Text;
using Scriban;
using Scriban.Parsing;
using Scriban.Syntax;
using Swapwright.Site.Models;
using Swapwright.Site.Rendering.Compiled;

namespace Swapwright.Site.Rendering;

/// <summary>
/// The site's templates, parsed once, and the files that go with them. Any number of workers may render at the same
/// time; each call uses a context of its own, kept for the next call.
/// </summary>
public sealed class Templates
{
    private const string Extension = ".sbn-html";
    private const string TextExtension = ".md";
    private const string ResourceRoot = "site-template/";
    private const string Layout = "layout";
    private const int DeepestExpression = 100;

    private readonly FrozenDictionary<string, Template> _templates;
    private readonly FrozenDictionary<string, string> _texts;
    private readonly FrozenDictionary<string, CompiledTemplate> _compiled;
    private readonly ConcurrentBag<PageContext> _contexts = [];
    private readonly ConcurrentBag<PageRun> _runs = [];

    private readonly IReadOnlyList<SiteFile> _files;

    /// <param name="nameOf">What a file is called where something is wrong with it, by its path.</param>
    private Templates(IEnumerable<SiteFile> files, Func<string, string>? nameOf = null)
    {
        _files = [.. files.OrderBy(file => file.Path, StringComparer.Ordinal)];
        var templates = new Dictionary<string, Template>(StringComparer.Ordinal);
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        var assets = new List<SiteFile>();
        foreach (var file in _files)
        {
            if (file.Path.EndsWith(Extension, StringComparison.Ordinal))
            {
                templates.Add(file.Path[..^Extension.Length], Parse(file, nameOf?.Invoke(file.Path) ?? file.Path));
            }
            else if (file.Path.EndsWith(TextExtension, StringComparison.Ordinal))
            {
                texts.Add(file.Path, Encoding.UTF8.GetString(file.Bytes.Span));
            }
            else
            {
                assets.Add(file);
            }
        }

        _texts = texts.ToFrozenDictionary(StringComparer.Ordinal);
        _templates = templates.ToFrozenDictionary(StringComparer.Ordinal);
        (_compiled, NotCompiled) = Compile(templates);
        Assets = assets;
    }

    /// <summary>Style sheet, script, icons: copied to the site under the same paths.</summary>
    public IReadOnlyList<SiteFile> Assets { get; }

    /// <summary>All templates and the files that go with them, in order of their paths.</summary>
    internal IReadOnlyList<SiteFile> Files => _files;

    /// <summary>A Markdown file among the templates, such as <c>findings/gap.md</c>; null where there is none.</summary>
    public string? Text(string path) => _texts.GetValueOrDefault(path);

    /// <summary>Templates that the engine has to walk through for every page, each with the place of what is to blame.</summary>
    public IReadOnlyList<string> NotCompiled { get; }

    public IEnumerable<string> Names => _templates.Keys.Order(StringComparer.Ordinal);

    /// <summary>The templates inside the program.</summary>
    public static Templates Embedded()
    {
        var assembly = typeof(Templates).Assembly;
        return new Templates(assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(ResourceRoot, StringComparison.Ordinal))
            .Select(name => new SiteFile(name[ResourceRoot.Length..].Replace('\\', '/'), ReadResource(assembly, name))));
    }

    /// <summary>The templates of a folder, for whoever works on them.</summary>
    public static Templates FromFolder(string folder) =>
        new(Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(path => !Path.GetFileName(path).StartsWith('.'))
            .Select(path => new SiteFile(Path.GetRelativePath(folder, path).Replace('\\', '/'), File.ReadAllBytes(path))));

    /// <summary>These templates, with those of a base in the place of the ones that have the same path.</summary>
    /// <exception cref="TemplateException">A template cannot be read or parsed.</exception>
    public Templates Over(TemplateFolder own)
    {
        if (own.Files.Count == 0)
        {
            return this;
        }

        var paths = own.Files.Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
        return new Templates(_files.Where(file => !paths.Contains(file.Path)).Concat(own.Files), path => paths.Contains(path) ? own.NameOf(path) : path);
    }

    /// <summary>Templates given as text, path to content.</summary>
    internal static Templates FromText(IReadOnlyDictionary<string, string> files) =>
        new(files.Select(file => new SiteFile(file.Key, Encoding.UTF8.GetBytes(file.Value))));

    /// <summary>The whole page as HTML.</summary>
    /// <exception cref="TemplateException">An unknown name, a wrong include or another fault of a template.</exception>
    public string Render(Page page)
    {
        var html = "";
        Render(page, text => html = text.ToString());
        return html;
    }

    /// <summary>The whole page as HTML, given to <paramref name="use"/> in a buffer that the next page takes.</summary>
    /// <exception cref="TemplateException">An unknown name, a wrong include or another fault of a template.</exception>
    public void Render(Page page, Action<ReadOnlySpan<char>> use)
    {
        if (!TryCompiled(page, use))
        {
            RenderByEngine(page, use);
        }
    }

    /// <summary>The page from compiled templates alone; nothing and false where it takes the engine.</summary>
    internal bool TryCompiled(Page page, Action<ReadOnlySpan<char>> use)
    {
        if (!_compiled.TryGetValue(Layout, out var layout))
        {
            return false;
        }

        if (!_runs.TryTake(out var run))
        {
            run = new PageRun(InWords);
        }

        try
        {
            use(run.Render(layout, page));
            return true;
        }
        catch (BeyondCompiledException)
        {
            return false;
        }
        finally
        {
            _runs.Add(run);
        }
    }

    /// <summary>The page as the template engine renders it, whose word is the last on what is a fault.</summary>
    internal void RenderByEngine(Page page, Action<ReadOnlySpan<char>> use)
    {
        if (!_templates.TryGetValue(Layout, out var layout))
        {
            throw new TemplateException(Layout + Extension, 1, 1, "there is no template of this name");
        }

        var context = Context();
        try
        {
            use(context.Render(layout, page));
            // Only a context that came through whole is used again.
            _contexts.Add(context);
        }
        catch (ScriptRuntimeException fault)
        {
            var start = fault.Span.Start;
            throw new TemplateException(fault.Span.FileName ?? Layout, start.Line + 1, start.Column + 1, fault.OriginalMessage, fault);
        }
        catch (InsufficientExecutionStackException fault)
        {
            throw new TemplateException(page.Template + Extension, 1, 1, "blocks or expressions are nested too deeply", fault);
        }
    }

    private PageContext Context() => _contexts.TryTake(out var context) ? context : new PageContext(new PageFunctions(_templates.GetValueOrDefault));

    private string InWords(object value)
    {
        var context = Context();
        var words = context.ObjectToString(value) ?? "";
        _contexts.Add(context);
        return words;
    }

    private (FrozenDictionary<string, CompiledTemplate> Compiled, IReadOnlyList<string> Not) Compile(Dictionary<string, Template> templates)
    {
        var compiled = new Dictionary<string, CompiledTemplate>(StringComparer.Ordinal);
        var not = new List<string>();
        foreach (var (name, template) in templates)
        {
            if (TemplateCompiler.Compile(template.Page!, other => _compiled.GetValueOrDefault(other), out var beyond) is { } made)
            {
                compiled.Add(name, made);
            }
            else
            {
                not.Add($"{name}{Extension}:{beyond}");
            }
        }

        return (compiled.ToFrozenDictionary(StringComparer.Ordinal), not);
    }

    private static Template Parse(SiteFile file, string name)
    {
        var text = Encoding.UTF8.GetString(file.Bytes.Span);
        var template = Template.Parse(text, name, new ParserOptions { ExpressionDepthLimit = DeepestExpression });
        if (template.HasErrors)
        {
            var first = template.Messages.First(message => message.Type == ParserMessageType.Error);
            var (line, column) = first.Span.Start is { Line: >= 0, Column: >= 0 } start ? (start.Line + 1, start.Column + 1) : EndOf(text);
            throw new TemplateException(name, line, column, first.Message);
        }

        return template;
    }

    // The parser has no place for what it misses at the end of a file.
    private static (int Line, int Column) EndOf(string text)
    {
        var last = text.LastIndexOf('\n');
        return (text.Count(letter => letter == '\n') + 1, text.Length - last);
    }

    private static byte[] ReadResource(Assembly assembly, string name)
    {
        using var stream = assembly.GetManifestResourceStream(name)!;
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
