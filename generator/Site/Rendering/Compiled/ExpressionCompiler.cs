using System.Collections.Immutable;
using Scriban.Syntax;

namespace Swapwright.Site.Rendering.Compiled;

/// <summary>The expressions of one template, and the slots that its names stand for.</summary>
internal sealed class ExpressionCompiler(TemplateShape shape)
{
    public const string Include = "include";

    private const string Loops = "for";
    private static readonly ImmutableArray<string> s_taken = ["page", "frame", "template", Loops, Include, "has", "css", "href", "link", "verb"];

    private readonly Dictionary<string, int> _own = new(StringComparer.Ordinal);
    private readonly Stack<(string Name, int Slot)> _loops = new();

    /// <summary>So many arguments does a template look at.</summary>
    public static int Arguments(ScriptNode node)
    {
        var most = Argument(node) is { } index ? index + 1 : 0;
        for (var i = 0; i < node.ChildrenCount; i++)
        {
            most = Math.Max(most, node.GetChildren(i) is { } child ? Arguments(child) : 0);
        }

        return most;
    }

    public int EnterLoop(ScriptVariable variable)
    {
        if (s_taken.Contains(variable.Name))
        {
            throw TemplateCompiler.Beyond(variable);
        }

        var slot = shape.NewSlot();
        _loops.Push((variable.Name, slot));
        return slot;
    }

    public void LeaveLoop() => _loops.Pop();

    /// <summary>The slot of a variable that starts with <c>$</c>.</summary>
    public int Own(ScriptVariableLocal variable)
    {
        if (variable.BaseName.Length == 0)
        {
            throw TemplateCompiler.Beyond(variable);
        }

        if (!_own.TryGetValue(variable.Name, out var slot))
        {
            _own.Add(variable.Name, slot = shape.NewSlot());
        }

        return slot;
    }

    public Value Value(ScriptExpression expression)
    {
        System.Runtime.CompilerServices.RuntimeHelpers.EnsureSufficientExecutionStack();
        return expression switch
        {
            ScriptLiteral { Value: null or string or int or bool } literal => new Constant(literal.Value),
            ScriptNestedExpression { Expression: { } inner } => Value(inner),
            ScriptVariableLocal own => new InSlot(Own(own)),
            ScriptVariableGlobal name => Named(name),
            ScriptIndexerExpression when Argument(expression) is { } index => new InSlot(index),
            ScriptIndexerExpression { Target: { } list, Index: { } index } => new Item(Value(list), Value(index)),
            ScriptMemberExpression { Target: ScriptVariableGlobal { Name: Loops } } turn => OfTurn(turn),
            ScriptMemberExpression { Target: { } target, Member: ScriptVariableGlobal member } => new Member(Value(target), member.Name),
            ScriptUnaryExpression { Operator: ScriptUnaryOperator.Not, Right: { } right } => new Not(Value(right)),
            ScriptBinaryExpression { Left: { } left, Right: { } right } both => Binary(both, Value(left), Value(right)),
            ScriptFunctionCall { Target: ScriptVariableGlobal function, Arguments: { Count: 1 } given } when !IsLoop(function) =>
                Calls.Of(function.Name, Value(given[0])) ?? throw TemplateCompiler.Beyond(expression),
            _ => throw TemplateCompiler.Beyond(expression),
        };
    }

    private static int? Argument(ScriptNode node) =>
        node is ScriptIndexerExpression { Target: ScriptVariableLocal { BaseName: "" }, Index: ScriptLiteral { Value: int index and >= 0 and < Rendering.Include.MostArguments } }
            ? index
            : null;

    private bool IsLoop(ScriptVariable name) => _loops.Any(loop => loop.Name == name.Name);

    private Value Named(ScriptVariableGlobal name) => _loops.FirstOrDefault(loop => loop.Name == name.Name) is { Name: not null } found
        ? new InSlot(found.Slot)
        : OfPage(name);

    private Value OfPage(ScriptVariableGlobal name)
    {
        shape.LooksAtPage = true;
        return name.Name switch
        {
            "page" => new PageItself(),
            "frame" => new FrameOfPage(),
            "template" => new TemplateOfPage(),
            _ => throw TemplateCompiler.Beyond(name),
        };
    }

    private Value OfTurn(ScriptMemberExpression turn) => _loops.TryPeek(out var loop) ? turn.Member?.Name switch
    {
        "index" => new TurnIndex(loop.Slot),
        "first" => new TurnIsFirst(loop.Slot),
        "last" => new TurnIsLast(loop.Slot),
        _ => throw TemplateCompiler.Beyond(turn),
    }
    : throw TemplateCompiler.Beyond(turn);

    private static Value Binary(ScriptBinaryExpression node, Value left, Value right) => node.Operator switch
    {
        ScriptBinaryOperator.And => new Both(left, right),
        ScriptBinaryOperator.Or => new Either(left, right),
        ScriptBinaryOperator.CompareEqual => new Same(left, right, wanted: true),
        ScriptBinaryOperator.CompareNotEqual => new Same(left, right, wanted: false),
        ScriptBinaryOperator.CompareLess => new Ordered(left, right, static (a, b) => a < b),
        ScriptBinaryOperator.CompareLessOrEqual => new Ordered(left, right, static (a, b) => a <= b),
        ScriptBinaryOperator.CompareGreater => new Ordered(left, right, static (a, b) => a > b),
        ScriptBinaryOperator.CompareGreaterOrEqual => new Ordered(left, right, static (a, b) => a >= b),
        ScriptBinaryOperator.Add => new Sum(left, right, 1),
        ScriptBinaryOperator.Subtract => new Sum(left, right, -1),
        _ => throw TemplateCompiler.Beyond(node),
    };
}
