using System.Text;
using Swapwright.Source;

namespace Swapwright.Drafting;

/// <summary>Text as a YAML value on one line.</summary>
internal static class DraftScalar
{
    /// <summary>Plain where YAML reads it back as the same text, in double quotes otherwise.</summary>
    public static string Of(string text) => IsPlain(text) ? text : Quoted(text);

    /// <summary>What somebody typed after an equals sign: a list or a mapping in flow form as it stands, a number or a flag as such, text otherwise.</summary>
    public static string Typed(string text) => text.Length > 0 && text[0] is '{' or '[' || PlainScalar.KindOf(text) != ScalarKind.Text ? text : Of(text);

    private static bool IsPlain(string text) =>
        text.Length > 0
        && char.IsLetter(text[0])
        && text[^1] != ' '
        && PlainScalar.KindOf(text) == ScalarKind.Text
        && text.All(c => char.IsLetterOrDigit(c) || c is ' ' or '-' or '.' or '/' or '(' or ')' or '\'' or '_' or '%' or '–');

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder(text.Length + 2).Append('"');
        foreach (var c in text)
        {
            if (c is '"' or '\\')
            {
                quoted.Append('\\');
            }

            quoted.Append(c);
        }

        return quoted.Append('"').ToString();
    }
}
