using Swapwright.Diagnostics;

namespace Swapwright.Source;

public enum ScalarKind
{
    Null,
    Flag,
    Integer,
    Number,
    Text,
}

/// <summary>A single value. <see cref="Text"/> is what was written, without quotes and with escapes replaced.</summary>
public sealed class ScalarNode : SourceNode
{
    internal ScalarNode(Place place, string text, ScalarKind kind, bool isQuoted, bool isBlock)
        : base(place)
    {
        Text = text;
        Kind = kind;
        IsQuoted = isQuoted;
        IsBlock = isBlock;
    }

    public string Text { get; }

    public ScalarKind Kind { get; }

    public bool IsQuoted { get; }

    /// <summary>Written as a block, after <c>|</c> or <c>&gt;</c>.</summary>
    public bool IsBlock { get; }

    /// <summary>Stands where something refused was left out, so that nobody reports the hole a second time.</summary>
    internal bool IsStandIn { get; init; }

    /// <summary>The exact decimal value of an integer or a number; false for everything else.</summary>
    public bool TryGetDecimal(out decimal value)
    {
        value = 0;
        return Kind is ScalarKind.Integer or ScalarKind.Number && PlainScalar.TryDecimal(Text, out value);
    }

    /// <summary>The truth value of a flag; false for everything else.</summary>
    public bool TryGetFlag(out bool value)
    {
        value = Kind == ScalarKind.Flag && Text[0] is 't' or 'T';
        return Kind == ScalarKind.Flag;
    }
}
