using System.Collections;
using System.Runtime.CompilerServices;
using Swapwright.Site.Models;

namespace Swapwright.Site.Rendering.Compiled;

/// <summary>
/// What compiled templates share while one page is rendered; kept by a worker from page to page. Its bounds count no less
/// than those of <see cref="PageContext"/> do, so a page that keeps to these keeps to those as well.
/// </summary>
internal sealed class PageRun
{
    private const int DeepestInclude = 40;

    /// <summary>Marks a place that nothing was put into; null is a value.</summary>
    private static readonly object s_unset = new();

    private readonly Func<object, string> _words;
    private Slot[] _slots = new Slot[256];
    private int _base;
    private int _used;
    private int _depth;
    private int _deepest;
    private int _steps;
    private int _iterations;

    /// <param name="words">How the engine writes a value that is neither text nor a whole number.</param>
    public PageRun(Func<object, string> words) => _words = words;

    public PageBuffer Output { get; } = new(64 * 1024, PageContext.MostOutput);

    public Page Page { get; private set; } = null!;

    /// <summary>Way up from the page being rendered to the site's root.</summary>
    public string Prefix { get; private set; } = "";

    /// <returns>The page, until the next one is rendered.</returns>
    /// <exception cref="BeyondCompiledException">The engine has to render this page.</exception>
    public ReadOnlySpan<char> Render(CompiledTemplate layout, Page page)
    {
        Output.Clear();
        Page = page;
        Prefix = page.Frame.Prefix;
        _base = _depth = _deepest = _steps = _iterations = 0;
        Reserve(layout.Shape.Slots);
        _slots.AsSpan(0, layout.Shape.Slots).Fill(new Slot { Value = s_unset });
        try
        {
            layout.Body.Run(this);
        }
        catch (InsufficientExecutionStackException fault)
        {
            throw new BeyondCompiledException("the stack is too small", fault);
        }
        finally
        {
            // Nothing of the page is to be held by a worker that waits for the next one.
            Page = null!;
            Array.Clear(_slots, 0, _used);
            _used = 0;
        }

        return Output.Text;
    }

    /// <summary>A block is entered that costs so many of the engine's steps.</summary>
    public void Step(int steps)
    {
        _steps += steps;
        if (_steps > PageContext.MostSteps)
        {
            throw new BeyondCompiledException("too many steps");
        }

        RuntimeHelpers.EnsureSufficientExecutionStack();
    }

    public void Iterate(int turns = 1)
    {
        _iterations += turns;
        if (_iterations > PageContext.MostIterations)
        {
            throw new BeyondCompiledException("too many turns of loops");
        }
    }

    public object? this[int slot]
    {
        get
        {
            var value = _slots[_base + slot].Value;
            return ReferenceEquals(value, s_unset) ? throw new BeyondCompiledException("nothing was put there") : value;
        }
        set => _slots[_base + slot].Value = value;
    }

    /// <summary>The turn of the loop whose variable is in this slot.</summary>
    public ref Turn TurnOf(int slot) => ref _slots[_base + slot].Turn;

    /// <summary>Runs a template on slots of its own behind those of the one that includes it.</summary>
    public void Include(CompiledTemplate template, int slotsOfCaller, ReadOnlySpan<Value> arguments)
    {
        Enter(1);
        var before = _base;
        var start = before + slotsOfCaller;
        Reserve(start + template.Shape.Slots);
        var looked = template.Shape.Arguments;
        for (var i = 0; i < arguments.Length; i++)
        {
            var value = arguments[i].Of(this);
            if (i < looked)
            {
                _slots[start + i].Value = value;
            }
        }

        for (var i = Math.Min(arguments.Length, looked); i < template.Shape.Slots; i++)
        {
            _slots[start + i].Value = s_unset;
        }

        _base = start;
        template.Body.Run(this);
        _base = before;
        _depth--;
    }

    /// <summary>The same for a template that goes by its arguments alone, of which all but the first are the same in this place: what it wrote of the same piece is written again.</summary>
    public void IncludeOnce(CompiledTemplate template, Included place, int slotsOfCaller, ReadOnlySpan<Value> arguments)
    {
        if (arguments[0].Of(this) is not Repeated { Written: { } writings })
        {
            Include(template, slotsOfCaller, arguments);
            return;
        }

        if (writings.Find(place, Prefix, out var isAsked) is { } known)
        {
            Enter(known.Depth);
            _depth -= known.Depth;
            Step(known.Steps);
            Iterate(known.Turns);
            Output.Write(known.Text);
            return;
        }

        // What it counts is counted by itself, so that it can be counted again.
        var (start, steps, turns, deepest) = (Output.Text.Length, _steps, _iterations, _deepest);
        _deepest = _depth;
        Include(template, slotsOfCaller, arguments);
        writings.Add(isAsked ? new Writing(place, Prefix, Output.Text[start..].ToString(), _steps - steps, _iterations - turns, _deepest - _depth) : new Writing(place, Prefix));
        _deepest = Math.Max(_deepest, deepest);
    }

    private void Enter(int includes)
    {
        _depth += includes;
        _deepest = Math.Max(_deepest, _depth);
        if (_depth > DeepestInclude)
        {
            throw new BeyondCompiledException("too many includes in each other");
        }
    }

    /// <summary>Writes a value as the engine writes it: text escaped, null as nothing.</summary>
    public void Write(object? value)
    {
        switch (value)
        {
            case null:
                break;
            case string text:
                Output.WriteEscaped(text);
                break;
            case HtmlString html:
                Output.Write(html.Value);
                break;
            case int number:
                Output.Write(number);
                break;
            default:
                Output.WriteEscaped(Words(value));
                break;
        }
    }

    /// <summary>A value in words, unescaped.</summary>
    public string Words(object value) =>
        value as string ?? (value is IEnumerable ? throw new BeyondCompiledException("a list is written") : _words(value));

    private void Reserve(int slots)
    {
        if (slots > _slots.Length)
        {
            Array.Resize(ref _slots, Math.Max(_slots.Length * 2, slots));
        }

        _used = Math.Max(_used, slots);
    }

    private struct Slot
    {
        public object? Value;
        public Turn Turn;
    }
}

/// <summary>Where a loop is.</summary>
internal struct Turn
{
    public int Index;
    public bool IsLast;
}
