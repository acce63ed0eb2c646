using System.Globalization;
using System.Text;

namespace Swapwright.Site.Models;

/// <summary>Values as class names and ids, the same in templates and in the data of scripts.</summary>
public static class ClassWord
{
    /// <summary>A word for a class or an id: lower-case letters, digits and single hyphens, whatever is given.</summary>
    public static string Of(object? value)
    {
        var text = Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
        var result = new StringBuilder(text.Length + 4);
        foreach (var c in text)
        {
            if (char.IsAsciiLetterUpper(c) && value is Enum && result.Length > 0)
            {
                result.Append('-');
            }

            if (char.IsAsciiLetterOrDigit(c))
            {
                result.Append(char.ToLowerInvariant(c));
            }
            else if (result.Length > 0 && result[^1] != '-')
            {
                result.Append('-');
            }
        }

        return result.ToString().TrimEnd('-');
    }
}
