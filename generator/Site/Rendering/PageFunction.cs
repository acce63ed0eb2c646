using Scriban;
using Scriban.Runtime;
using Scriban.Syntax;

namespace Swapwright.Site.Rendering;

/// <summary>
/// A function of one value that templates call. The engine's own wrapping of delegates calls them by reflection and converts every
/// argument, which took more time than the rest of a page; here a value of the wrong kind is a fault of the template.
/// </summary>
internal sealed class PageFunction<T>(string name, Func<PageContext, T?, object?> function) : IScriptCustomFunction
{
    public int RequiredParameterCount => 1;

    public int ParameterCount => 1;

    public ScriptVarParamKind VarParamKind => ScriptVarParamKind.None;

    public Type ReturnType => typeof(object);

    public ScriptParameterInfo GetParameterInfo(int index) => new(typeof(object), "value");

    public object? Invoke(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement) =>
        arguments[0] is var value && value is null or T
            ? function((PageContext)context, (T?)value)
            : throw new ScriptRuntimeException(callerContext?.Span ?? default, $"`{name}` takes no value of this kind");

    public ValueTask<object?> InvokeAsync(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement) =>
        new(Invoke(context, callerContext, arguments, blockStatement));
}
