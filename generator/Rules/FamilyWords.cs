using System.Collections.Immutable;
using Swapwright.Knowledge;

namespace Swapwright.Rules;

/// <summary>
/// What a family of variants is called. Families have no title of their own; where the titles of all of a family's variants, and
/// of no other, begin with the same words, these words are its name. Otherwise its id has to do.
/// </summary>
internal static class FamilyWords
{
    /// <param name="subject">chassis or donor.</param>
    /// <param name="variants">All variants of the subject.</param>
    public static string Of(string subject, string family, ImmutableArray<Variant> variants)
    {
        var own = variants.Where(variant => variant.Family == family).Select(variant => Words(variant.Title)).ToList();
        var shared = own[0].TakeWhile((word, at) => own.TrueForAll(words => words.Length > at && words[at] == word)).ToArray();
        var told = shared.Length > 0 && variants.Where(variant => variant.Family != family).All(variant => !Words(variant.Title).AsSpan().StartsWith(shared));
        var name = string.Join(' ', shared).TrimEnd(' ', ',', ':', ';', '–', '-', '(');
        return !told || name.Length == 0 ? $"{subject} family {family}" : own.Count == 1 ? $"{subject} {name}" : $"{subject}: any {name}";
    }

    private static string[] Words(string title) => title.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
