using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Scriban.Syntax;

namespace Swapwright.Site.Rendering.Compiled;

/// <summary>
/// Makes nodes of a parsed template. What it does not know, a template of a base may well use: then the engine renders the
/// pages that come by it. What a name means has to be seen from the template alone, so no loop takes the name of something else.
/// </summary>
internal sealed class TemplateCompiler
{
    /// <summary>At least what the engine takes beside the nodes of an expression: the call, the body and its block.</summary>
    private const int CostOfStatement = 6;

    private readonly TemplateShape _shape;
    private readonly ExpressionCompiler _expressions;
    private readonly Func<string, CompiledTemplate?> _find;

    private TemplateCompiler(Func<string, CompiledTemplate?> find, ScriptNode page)
    {
        _find = find;
        _shape = new TemplateShape(ExpressionCompiler.Arguments(page));
        _expressions = new ExpressionCompiler(_shape);
    }

    /// <param name="find">Another compiled template, asked when pages are rendered.</param>
    /// <param name="beyond">What stands in the way and where; null where nothing does.</param>
    public static CompiledTemplate? Compile(ScriptPage page, Func<string, CompiledTemplate?> find, out string? beyond)
    {
        try
        {
            beyond = null;
            var compiler = new TemplateCompiler(find, page);

            // The engine makes no body of an empty file.
            return page.FrontMatter is { } matter ? throw Beyond(matter) : new CompiledTemplate(page.Body is { } body ? compiler.Block(body) : new Block([], CostOfStatement), compiler._shape);
        }
        catch (Exception fault) when (fault is BeyondCompiledException or InsufficientExecutionStackException)
        {
            beyond = fault.Message;
            return null;
        }
    }

    internal static BeyondCompiledException Beyond(ScriptNode node) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{node.Span.Start.Line + 1}:{node.Span.Start.Column + 1}: {node.GetType().Name} `{node}`"));

    private Block Block(ScriptBlockStatement block)
    {
        RuntimeHelpers.EnsureSufficientExecutionStack();
        var steps = new List<Step>();
        var text = "";
        var cost = CostOfStatement;
        foreach (var statement in block.Statements)
        {
            cost += CostOfStatement;
            if (statement is ScriptRawStatement { IsEscape: false } raw)
            {
                text += raw.Text.ToString();
            }
            else if (statement is not (ScriptEscapeStatement { EscapeCount: 0 } or ScriptEndStatement or ScriptNopStatement))
            {
                EndText();
                steps.Add(Statement(statement, ref cost));
            }
        }

        EndText();
        return new Block([.. steps], cost);

        void EndText()
        {
            if (text.Length > 0)
            {
                steps.Add(new RawText(text));
                text = "";
            }
        }
    }

    private Step Statement(ScriptStatement statement, ref int cost)
    {
        switch (statement)
        {
            case ScriptExpressionStatement { Expression: { } expression }:
                cost += Size(expression);
                return Expression(expression);
            case ScriptIfStatement choice:
                return Choice(choice, ref cost);
            case ScriptForStatement loop and not ScriptTableRowStatement:
                cost += Size(loop.Iterator!);
                return Loop(loop);
            case ScriptCaptureStatement { Target: ScriptVariableLocal target } capture:
                var body = Block((ScriptBlockStatement)capture.Body!);
                return new Captured(_expressions.Own(target), body);
            default:
                throw Beyond(statement);
        }
    }

    private Step Expression(ScriptExpression expression) => expression switch
    {
        ScriptAssignExpression { Target: ScriptVariableLocal target, EqualToken.TokenType: Scriban.Parsing.TokenType.Equal } assign =>
            new Assigned(_expressions.Own(target), _expressions.Value(assign.Value!)),
        ScriptFunctionCall { Target: ScriptVariableGlobal { Name: ExpressionCompiler.Include }, Arguments: { Count: >= 1 and <= Include.MostArguments } given } => Included(given),
        _ => new Written(_expressions.Value(expression)),
    };

    private Included Included(ScriptList<ScriptExpression> given)
    {
        var include = new Included(_expressions.Value(given[0]), [.. given.Skip(1).Select(_expressions.Value)], _shape, _find);
        _shape.Includes.Add(include);
        return include;
    }

    private Choice Choice(ScriptIfStatement choice, ref int cost)
    {
        cost += CostOfStatement + Size(choice.Condition!);
        var condition = _expressions.Value(choice.Condition!);
        var then = Block(choice.Then!);
        return new Choice(condition, then, choice.Else switch
        {
            null => null,
            ScriptIfStatement next => Choice(next, ref cost),
            ScriptElseStatement { Body: { } last } => Block(last),
            _ => throw Beyond(choice.Else),
        });
    }

    private Loop Loop(ScriptForStatement loop)
    {
        if (loop.Variable is not ScriptVariableGlobal variable || loop.NamedArguments is { Count: > 0 } || loop.SetContinue)
        {
            throw Beyond(loop);
        }

        var items = _expressions.Value(loop.Iterator!);
        var slot = _expressions.EnterLoop(variable);
        var body = Block(loop.Body!);
        _expressions.LeaveLoop();
        return new Loop(slot, items, body, loop.Else is ScriptElseStatement { Body: { } otherwise } ? Block(otherwise) : null);
    }

    private static int Size(ScriptNode node)
    {
        var size = 1;
        for (var i = 0; i < node.ChildrenCount; i++)
        {
            size += node.GetChildren(i) is { } child ? Size(child) : 0;
        }

        return size;
    }
}
