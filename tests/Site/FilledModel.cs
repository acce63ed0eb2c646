using System.Collections;
using System.Reflection;
using Swapwright.Site;
using Swapwright.Site.Models;

namespace Swapwright.Tests.Site;

/// <summary>
/// Builds a page in which every text, however deep, is given by a function of its member's path and every list has two
/// entries, so that a member added later is covered without anybody thinking of it.
/// </summary>
internal static class FilledModel
{
    public static Page Of(Type page, Func<string, string> text, string path)
    {
        var result = (Page)Build(page, text, page.Name, 0)!;
        // The path decides the way up to the root and never comes from a text.
        typeof(SiteFrame).GetProperty(nameof(SiteFrame.Path))!.SetValue(result.Frame, path);
        return result;
    }

    private static object? Build(Type type, Func<string, string> text, string member, int depth)
    {
        var inner = Nullable.GetUnderlyingType(type) ?? type;
        if (depth > 24)
        {
            throw new InvalidOperationException($"{type.Name} contains itself");
        }

        if (inner == typeof(string))
        {
            return text(member);
        }

        if (inner == typeof(HtmlString))
        {
            return SamplePages.Words(text(member));
        }

        if (inner == typeof(int))
        {
            return 7;
        }

        if (inner == typeof(bool))
        {
            return true;
        }

        if (inner.IsEnum)
        {
            return Enum.GetValues(inner).GetValue(Enum.GetValues(inner).Length - 1);
        }

        if (inner.IsGenericType && inner.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
        {
            var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(inner.GenericTypeArguments[0]))!;
            list.Add(Build(inner.GenericTypeArguments[0], text, member, depth + 1));
            list.Add(Build(inner.GenericTypeArguments[0], text, member, depth + 1));
            return list;
        }

        return BuildRecord(inner, text, member, depth);
    }

    private static object BuildRecord(Type type, Func<string, string> text, string member, int depth)
    {
        var constructor = type.GetConstructors().OrderByDescending(one => one.GetParameters().Length).First();
        var result = constructor.Invoke(
            [.. constructor.GetParameters().Select(parameter => Build(parameter.ParameterType, text, $"{member}.{parameter.Name}", depth + 1))]);
        var given = constructor.GetParameters().Select(parameter => parameter.Name!).ToHashSet(StringComparer.Ordinal);
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(property => property.CanWrite && !given.Contains(property.Name)))
        {
            property.SetValue(result, Build(property.PropertyType, text, $"{member}.{property.Name}", depth + 1));
        }

        return result;
    }
}
