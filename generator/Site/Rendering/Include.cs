using Scriban;
using Scriban.Runtime;
using Scriban.Syntax;

namespace Swapwright.Site.Rendering;

/// <summary>
/// Renders another template straight into the current output. The engine's own include returns text, which would be
/// escaped a second time. Arguments are seen there as $0, $1 and so on; variables that start with $ stay inside.
/// </summary>
internal sealed class Include(Func<string, Template?> find) : IScriptCustomFunction
{
    /// <summary>The name and what a template is given; more would be a sign that it wants a record of its own.</summary>
    public const int MostArguments = 8;

    public int RequiredParameterCount => 1;

    public int ParameterCount => MostArguments;

    public ScriptVarParamKind VarParamKind => ScriptVarParamKind.LastParameter;

    public Type ReturnType => typeof(object);

    public ScriptParameterInfo GetParameterInfo(int index) => new(typeof(object), "argument");

    public object? Invoke(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement)
    {
        if (arguments.Count == 0 || arguments[0] is not string name || find(name)?.Page is not { } body)
        {
            throw new ScriptRuntimeException(callerContext?.Span ?? default, $"there is no template `{(arguments.Count > 0 ? arguments[0] : "")}`");
        }

        context.EnterRecursive(callerContext!);
        context.PushLocal();
        try
        {
            var rest = new ScriptArray();
            for (var i = 1; i < arguments.Count; i++)
            {
                rest.Add(arguments[i]);
            }

            context.SetValue(ScriptVariable.Arguments, rest, true);
            context.Evaluate(body);
        }
        finally
        {
            context.PopLocal();
            context.ExitRecursive(callerContext!);
        }

        return null;
    }

    public ValueTask<object?> InvokeAsync(
        TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement) =>
        new(Invoke(context, callerContext, arguments, blockStatement));
}
