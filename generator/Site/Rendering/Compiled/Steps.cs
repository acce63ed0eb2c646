using System.Collections;
using System.Collections.Immutable;

namespace Swapwright.Site.Rendering.Compiled;

/// <summary>Something a template does.</summary>
internal abstract class Step
{
    public abstract void Run(PageRun run);
}

/// <param name="cost">What the engine takes for the statements of this block, those of inner blocks left out.</param>
internal sealed class Block(Step[] steps, int cost) : Step
{
    public override void Run(PageRun run)
    {
        run.Step(cost);
        foreach (var step in steps)
        {
            step.Run(run);
        }
    }
}

internal sealed class RawText(string text) : Step
{
    public override void Run(PageRun run) => run.Output.Write(text);
}

internal sealed class Written(Value value) : Step
{
    public override void Run(PageRun run) => value.Write(run);
}

internal sealed class Assigned(int slot, Value value) : Step
{
    public override void Run(PageRun run) => run[slot] = value.Of(run);
}

internal sealed class Captured(int slot, Block body) : Step
{
    public override void Run(PageRun run)
    {
        var start = run.Output.Text.Length;
        body.Run(run);
        run[slot] = new HtmlString(run.Output.Take(start));
    }
}

internal sealed class Choice(Value condition, Block then, Step? otherwise) : Step
{
    public override void Run(PageRun run)
    {
        if (condition.Truth(run))
        {
            then.Run(run);
        }
        else
        {
            otherwise?.Run(run);
        }
    }
}

internal sealed class Loop(int slot, Value items, Block body, Block? otherwise) : Step
{
    public override void Run(PageRun run)
    {
        switch (items.Of(run))
        {
            case null:
                break;
            case string or IDictionary:
                throw new BeyondCompiledException("a loop over what is no list");
            case IList list:
                Turns(run, list);
                break;
            case IEnumerable sequence:
                Turns(run, Taken(run, sequence));
                break;
            default:
                throw new BeyondCompiledException("a loop over what is no list");
        }
    }

    private void Turns(PageRun run, IList list)
    {
        var count = list.Count;
        if (count == 0)
        {
            otherwise?.Run(run);
            return;
        }

        for (var i = 0; i < count; i++)
        {
            run.Iterate();
            run[slot] = list[i];
            run.TurnOf(slot) = new Turn { Index = i, IsLast = i == count - 1 };
            body.Run(run);
        }
    }

    private static List<object?> Taken(PageRun run, IEnumerable sequence)
    {
        var taken = new List<object?>();
        foreach (var item in sequence)
        {
            run.Iterate();
            taken.Add(item);
        }

        return taken;
    }
}

/// <summary>Another template in this place. Which one a name means is settled when it is first met.</summary>
/// <param name="caller">The template that includes.</param>
internal sealed class Included(Value name, ImmutableArray<Value> arguments, TemplateShape caller, Func<string, CompiledTemplate?> find) : Step
{
    private readonly bool _isOfOnePiece = arguments.Length > 0 && arguments.Skip(1).All(argument => argument is Constant);
    private CompiledTemplate? _known;

    /// <summary>The template; null where it is not known beforehand, or not compiled.</summary>
    public CompiledTemplate? Template => name is Constant { Text: { } text } ? find(text) : null;

    public override void Run(PageRun run)
    {
        var template = _known ?? Found(run);
        if (_isOfOnePiece && template.GoesByArguments)
        {
            run.IncludeOnce(template, this, caller.Slots, arguments.AsSpan());
        }
        else
        {
            run.Include(template, caller.Slots, arguments.AsSpan());
        }
    }

    private CompiledTemplate Found(PageRun run)
    {
        var found = name.Of(run) is string text ? find(text) : null;
        if (found is not null && name is Constant)
        {
            _known = found;
        }

        return found ?? throw new BeyondCompiledException("an include of what is not compiled");
    }
}
