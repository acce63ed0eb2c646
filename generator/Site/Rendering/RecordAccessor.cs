using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Reflection;
using System.Text;
using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;
using Swapwright.Site.Rendering.Compiled;

namespace Swapwright.Site.Rendering;

/// <summary>
/// Shows a record's public properties to templates under snake_case names and nothing else: no methods, no fields,
/// no writing. The names are worked out once for each type.
/// </summary>
internal sealed class RecordAccessor : IObjectAccessor
{
    private static readonly ConcurrentDictionary<Type, RecordAccessor> Known = new();

    private readonly FrozenDictionary<string, PropertyGetter> _properties;

    private RecordAccessor(Type type)
    {
        _properties = type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(property => property.CanRead && property.GetIndexParameters().Length == 0)
            .ToFrozenDictionary(property => SnakeCase(property.Name), PropertyGetter.Of, StringComparer.Ordinal);
    }

    public bool HasIndexer => false;

    public Type IndexType => typeof(string);

    public static RecordAccessor For(Type type) => Known.GetOrAdd(type, static key => new RecordAccessor(key));

    /// <summary>How a property is read; null where there is none of this name.</summary>
    public PropertyGetter? Getter(string name) => _properties.GetValueOrDefault(name);

    public int GetMemberCount(TemplateContext context, SourceSpan span, object target) => _properties.Count;

    public IEnumerable<string> GetMembers(TemplateContext context, SourceSpan span, object target) =>
        _properties.Keys.Order(StringComparer.Ordinal);

    public bool HasMember(TemplateContext context, SourceSpan span, object target, string member) => _properties.ContainsKey(member);

    public bool TryGetValue(TemplateContext context, SourceSpan span, object target, string member, out object? value)
    {
        var known = _properties.TryGetValue(member, out var property);
        value = known ? property!.Get(target) : null;
        return known;
    }

    public bool TrySetValue(TemplateContext context, SourceSpan span, object target, string member, object? value) => false;

    public bool TryGetItem(TemplateContext context, SourceSpan span, object target, object index, out object? value)
    {
        value = null;
        return false;
    }

    public bool TrySetItem(TemplateContext context, SourceSpan span, object target, object index, object? value) => false;

    private static string SnakeCase(string name)
    {
        var result = new StringBuilder(name.Length + 4);
        for (var i = 0; i < name.Length; i++)
        {
            if (i > 0 && char.IsUpper(name[i]))
            {
                result.Append('_');
            }

            result.Append(char.ToLowerInvariant(name[i]));
        }

        return result.ToString();
    }
}
