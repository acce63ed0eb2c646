using System.Collections;

namespace Swapwright.Site.Rendering.Compiled;

/// <summary>Something a template asks for.</summary>
internal abstract class Value
{
    protected static readonly object Yes = true;
    protected static readonly object No = false;

    public abstract object? Of(PageRun run);

    /// <summary>As the engine judges: null and false are not, everything else is.</summary>
    public virtual bool Truth(PageRun run) => IsTrue(Of(run));

    public virtual void Write(PageRun run) => run.Write(Of(run));

    public static bool IsTrue(object? value) => value is bool known ? known : value is not null;
}

/// <summary>A value that is either true or false.</summary>
internal abstract class Judgement : Value
{
    public abstract override bool Truth(PageRun run);

    public sealed override object Of(PageRun run) => Truth(run) ? Yes : No;
}

internal sealed class Constant(object? value) : Value
{
    public string? Text => value as string;

    public override object? Of(PageRun run) => value;
}

internal sealed class InSlot(int slot) : Value
{
    public override object? Of(PageRun run) => run[slot];
}

internal sealed class PageItself : Value
{
    public override object Of(PageRun run) => run.Page;
}

internal sealed class FrameOfPage : Value
{
    public override object Of(PageRun run) => run.Page.Frame;
}

internal sealed class TemplateOfPage : Value
{
    public override object Of(PageRun run) => run.Page.Template;
}

internal sealed class TurnIndex(int slot) : Value
{
    public override object Of(PageRun run) => run.TurnOf(slot).Index;

    public override void Write(PageRun run) => run.Output.Write(run.TurnOf(slot).Index);
}

internal sealed class TurnIsFirst(int slot) : Judgement
{
    public override bool Truth(PageRun run) => run.TurnOf(slot).Index == 0;
}

internal sealed class TurnIsLast(int slot) : Judgement
{
    public override bool Truth(PageRun run) => run.TurnOf(slot).IsLast;
}

internal sealed class Not(Value value) : Judgement
{
    public override bool Truth(PageRun run) => !value.Truth(run);
}

internal sealed class Both(Value left, Value right) : Judgement
{
    public override bool Truth(PageRun run) => left.Truth(run) && right.Truth(run);
}

internal sealed class Either(Value left, Value right) : Judgement
{
    public override bool Truth(PageRun run) => left.Truth(run) || right.Truth(run);
}

/// <summary>Equal, or not: texts, numbers, and anything in words beside a text.</summary>
internal sealed class Same(Value left, Value right, bool wanted) : Judgement
{
    public override bool Truth(PageRun run) => wanted == (left.Of(run), right.Of(run)) switch
    {
        (string a, string b) => string.Equals(a, b, StringComparison.Ordinal),
        (int a, int b) => a == b,
        (string a, Enum b) => string.Equals(a, run.Words(b), StringComparison.Ordinal),
        (Enum a, string b) => string.Equals(run.Words(a), b, StringComparison.Ordinal),
        _ => throw new BeyondCompiledException("values that the engine compares"),
    };
}

internal sealed class Ordered(Value left, Value right, Func<int, int, bool> holds) : Judgement
{
    public override bool Truth(PageRun run) =>
        left.Of(run) is int a && right.Of(run) is int b ? holds(a, b) : throw new BeyondCompiledException("values that the engine compares");
}

internal sealed class Sum(Value left, Value right, int sign) : Value
{
    public override object Of(PageRun run) => Added(run);

    public override void Write(PageRun run) => run.Output.Write(Added(run));

    private int Added(PageRun run) =>
        left.Of(run) is int a && right.Of(run) is int b && a + ((long)sign * b) is >= int.MinValue and <= int.MaxValue and var sum
            ? (int)sum
            : throw new BeyondCompiledException("values that the engine adds");
}

internal sealed class Item(Value list, Value index) : Value
{
    public override object? Of(PageRun run) =>
        list.Of(run) is IList items and not IDictionary && index.Of(run) is int i && i >= 0 && i < items.Count
            ? Bounded(items[i])
            : throw new BeyondCompiledException("an item that is not there");

    private static object? Bounded(object? value) =>
        value is string { Length: > PageContext.LongestText } ? throw new BeyondCompiledException("a text longer than any page") : value;
}

/// <summary>A property of a record, through the getter for the type that it is.</summary>
internal sealed class Member(Value target, string name) : Value
{
    /// <summary>Pages are of some thirty types and almost everything else is of one.</summary>
    private const int MostSeen = 8;

    private Seen[] _seen = [];

    public override object? Of(PageRun run)
    {
        var value = On(run, out var owner).Get(owner);
        return value is string { Length: > PageContext.LongestText } ? throw new BeyondCompiledException("a text longer than any page") : value;
    }

    public override bool Truth(PageRun run) => On(run, out var owner).Truth(owner);

    public override void Write(PageRun run) => On(run, out var owner).Write(owner, run);

    private PropertyGetter On(PageRun run, out object owner)
    {
        owner = target.Of(run) ?? throw new BeyondCompiledException("a member of null");
        var type = owner.GetType();
        foreach (var seen in _seen)
        {
            if (seen.Type == type)
            {
                return seen.Getter;
            }
        }

        return Bound(type);
    }

    private PropertyGetter Bound(Type type)
    {
        var getter = (type.Assembly == typeof(Member).Assembly ? RecordAccessor.For(type).Getter(name) : null)
            ?? throw new BeyondCompiledException("a member that is not there");
        var seen = _seen;
        if (seen.Length < MostSeen)
        {
            // Another worker may do the same; what is lost by it is found again.
            _seen = [.. seen, new Seen(type, getter)];
        }

        return getter;
    }

    private sealed record Seen(Type Type, PropertyGetter Getter);
}
