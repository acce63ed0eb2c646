using System.Globalization;
using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;
using Scriban.Syntax;

namespace Swapwright.Site.Rendering;

/// <summary>
/// One worker's rendering state. Every output of a template passes <see cref="Write(SourceSpan, object)"/>, which
/// escapes all but <see cref="HtmlString"/>; what a template can call is what <see cref="PageFunctions"/> gives it.
/// </summary>
internal sealed class PageContext : TemplateContext
{
    /// <summary>Far above the largest guide, low enough to end a template that loops by mistake.</summary>
    public const int MostIterations = 200_000;

    /// <summary>
    /// Nodes evaluated for one page. Loops inside each other multiply what <see cref="MostIterations"/> allows each, and a
    /// clock would end the same template sometimes: counting ends it always, at the same place. The largest guides take some
    /// hundred thousand.
    /// </summary>
    public const int MostSteps = 20_000_000;

    /// <summary>Characters of one page, and of one text in it.</summary>
    public const int MostOutput = 32 * 1024 * 1024;
    public const int LongestText = 4 * 1024 * 1024;

    private readonly PageBuffer _buffer = new(64 * 1024);
    private int _steps;
    private long _written;

    public PageContext(PageFunctions functions)
        : base(functions)
    {
        LoopLimit = MostIterations;
        LimitToString = 0;
        StrictVariables = true;
        EnableRelaxedMemberAccess = false;
        EnableRelaxedIndexerAccess = false;
        EnableRelaxedFunctionAccess = false;
        AutoIndent = false;
        NewLine = "\n";
        PushCulture(CultureInfo.InvariantCulture);
        PushOutput(_buffer);
    }

    /// <summary>Way up from the page being rendered to the site's root.</summary>
    public string Prefix { get; private set; } = "";

    /// <returns>The page, until the next one is rendered.</returns>
    public ReadOnlySpan<char> Render(Template layout, Models.Page page)
    {
        _buffer.Clear();
        _steps = 0;
        _written = 0;
        Prefix = page.Frame.Prefix;
        var globals = new ScriptObject
        {
            ["page"] = page,
            ["frame"] = page.Frame,
            ["template"] = page.Template,
        };
        PushGlobal(globals);
        Evaluate(layout.Page!);
        PopGlobal();
        return _buffer.Text;
    }

    public override TemplateContext Write(SourceSpan span, object? textAsObject)
    {
        switch (textAsObject)
        {
            case null:
                break;
            case HtmlString html:
                Write(html.Value);
                break;
            case string text:
                Bound(span, text.Length);
                Escape(text);
                break;
            default:
                Escape(ObjectToString(textAsObject) ?? "");
                break;
        }

        return this;
    }

    /// <summary>A captured block was escaped when it was written; keeping it as HTML avoids escaping it again.</summary>
    public override object? Evaluate(ScriptNode? scriptNode, bool aliasReturnedFunction)
    {
        if (++_steps > MostSteps)
        {
            throw new ScriptRuntimeException(scriptNode?.Span ?? default, "the template does not come to an end: too many steps for one page");
        }

        System.Runtime.CompilerServices.RuntimeHelpers.EnsureSufficientExecutionStack();
        if (scriptNode is ScriptBinaryExpression { Operator: ScriptBinaryOperator.Multiply } product)
        {
            return Multiply(product);
        }

        if (scriptNode is not ScriptCaptureStatement capture)
        {
            var result = base.Evaluate(scriptNode, aliasReturnedFunction);
            return result is string { Length: > LongestText }
                ? throw new ScriptRuntimeException(scriptNode?.Span ?? default, "the template makes a text longer than any page")
                : result;
        }

        var held = new PageBuffer();
        PushOutput(held);
        try
        {
            base.Evaluate(capture.Body!, false);
        }
        finally
        {
            PopOutput();
        }

        SetValue(capture.Target!, new HtmlString(held.ToString()));
        return null;
    }

    /// <summary>Functions take what they are given and judge it themselves; the engine would examine the type of every argument first.</summary>
    public override object? ToObject(SourceSpan span, object? value, Type destinationType) =>
        destinationType == typeof(object) ? value : base.ToObject(span, value, destinationType);

    protected override IObjectAccessor GetMemberAccessorImpl(object target) =>
        target.GetType().Assembly == typeof(PageContext).Assembly
            ? RecordAccessor.For(target.GetType())
            : base.GetMemberAccessorImpl(target)!;

    private void Escape(string text)
    {
        if (Output is PageBuffer buffer)
        {
            buffer.WriteEscaped(text);
        }
        else
        {
            Write(HtmlText.Escape(text));
        }
    }

    /// <summary>A text times a number would be made to its full length before anybody could look at it.</summary>
    private object? Multiply(ScriptBinaryExpression product)
    {
        var (left, right) = (Evaluate(product.Left!), Evaluate(product.Right!));
        return left is string || right is string
            ? throw new ScriptRuntimeException(product.Span, "a text is not multiplied")
            : ScriptBinaryExpression.Evaluate(this, product.Span, product.Operator, product.Left!.Span, left, product.Right!.Span, right);
    }

    private void Bound(SourceSpan span, int length)
    {
        _written += length;
        if (_written > MostOutput)
        {
            throw new ScriptRuntimeException(span, "the page grows beyond 32 MiB");
        }
    }
}
