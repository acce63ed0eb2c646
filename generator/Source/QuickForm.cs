using System.Globalization;
using System.Text.RegularExpressions;

namespace Swapwright.Source;

/// <summary>
/// A schema as far as it can say quickly that a value certainly has the right form. It only ever errs on the other side:
/// a value that is not accepted goes to the validator, which decides and words what is wrong. Most files of a base are
/// sound, and for those the validator, which is slow to load and works on a copy of the tree, is never needed.
/// </summary>
internal sealed class QuickForm
{
    /// <summary>The form holds a keyword that is not weighed here: nothing is accepted.</summary>
    public bool IsUnknown { get; set; }

    public QuickForm? Target { get; set; }

    public HashSet<string>? Types { get; set; }

    /// <summary>The texts of an enumeration; null where there is none.</summary>
    public HashSet<string>? Listed { get; set; }

    /// <summary>Texts and flags, as written, that the value must not be.</summary>
    public HashSet<string>? Barred { get; set; }

    public int MinLength { get; set; }

    public int MaxLength { get; set; } = int.MaxValue;

    public Func<string, bool>? Pattern { get; set; }

    public bool IsDate { get; set; }

    public decimal Minimum { get; set; } = decimal.MinValue;

    public decimal Maximum { get; set; } = decimal.MaxValue;

    /// <summary>A limit that the number must be above.</summary>
    public decimal? Above { get; set; }

    public int MinItems { get; set; }

    public int MaxItems { get; set; } = int.MaxValue;

    public bool UniqueItems { get; set; }

    public QuickForm? Items { get; set; }

    public int MinProperties { get; set; }

    public int MaxProperties { get; set; } = int.MaxValue;

    public List<string> Required { get; } = [];

    public Dictionary<string, QuickForm> Properties { get; } = new(StringComparer.Ordinal);

    public List<(Func<string, bool> Pattern, QuickForm Form)> ByPattern { get; } = [];

    /// <summary>What is asked of a key that nothing above names; null where such keys may hold anything.</summary>
    public QuickForm? Others { get; set; }

    public bool AllowsOthers { get; set; } = true;

    public bool Accepts(SourceNode node)
    {
        if (IsUnknown)
        {
            return false;
        }

        return Target?.Accepts(node) ?? node switch
        {
            ScalarNode scalar => Accepts(scalar),
            SequenceNode sequence => Accepts(sequence),
            MappingNode mapping => Accepts(mapping),
            _ => false,
        };
    }

    private bool Accepts(ScalarNode scalar)
    {
        switch (scalar.Kind)
        {
            case ScalarKind.Text:
                return Allows("string") && Listed?.Contains(scalar.Text) != false && !IsBarred(scalar.Text) && AcceptsText(scalar.Text);
            case ScalarKind.Flag:
                return Allows("boolean") && Listed is null && !IsBarred(scalar.Text);
            case ScalarKind.Integer or ScalarKind.Number:
                var whole = scalar.Kind == ScalarKind.Integer && Types?.Contains("integer") == true;
                return (Allows("number") || whole) && Listed is null && Barred is null
                    && scalar.TryGetDecimal(out var number) && number >= Minimum && number <= Maximum && !(number <= Above) && number is >= long.MinValue and <= long.MaxValue;
            default:
                return false; // nulls are few, and left to the validator
        }
    }

    private bool AcceptsText(string text) =>
        text.Length >= MinLength && text.Length <= MaxLength
        // Above one character it matters how characters are counted.
        && (MinLength <= 1 || text.All(char.IsAscii))
        && Pattern?.Invoke(text) != false
        && (!IsDate || DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _));

    private bool Accepts(SequenceNode sequence)
    {
        if (!Allows("array") || Listed is not null || Barred is not null || sequence.Items.Length < MinItems || sequence.Items.Length > MaxItems || (UniqueItems && !AreDifferentTexts(sequence)))
        {
            return false;
        }

        foreach (var item in sequence.Items)
        {
            if (Items?.Accepts(item) == false)
            {
                return false;
            }
        }

        return true;
    }

    private bool Accepts(MappingNode mapping)
    {
        if (!Allows("object") || Listed is not null || Barred is not null || mapping.Entries.Length < MinProperties || mapping.Entries.Length > MaxProperties)
        {
            return false;
        }

        foreach (var key in Required)
        {
            if (mapping[key] is null)
            {
                return false;
            }
        }

        foreach (var entry in mapping.Entries)
        {
            if (!Accepts(entry))
            {
                return false;
            }
        }

        return true;
    }

    private bool Accepts(MappingEntry entry)
    {
        var known = Properties.TryGetValue(entry.Key.Text, out var form);
        if (known && !form!.Accepts(entry.Value))
        {
            return false;
        }

        foreach (var (pattern, one) in ByPattern)
        {
            if (pattern(entry.Key.Text))
            {
                known = true;
                if (!one.Accepts(entry.Value))
                {
                    return false;
                }
            }
        }

        return known || (AllowsOthers && Others?.Accepts(entry.Value) != false);
    }

    private bool Allows(string type) => Types?.Contains(type) != false;

    private bool IsBarred(string text) => Barred?.Contains(text.ToLowerInvariant()) == true;

    /// <summary>Other values than texts may be the same although they are written differently.</summary>
    private static bool AreDifferentTexts(SequenceNode sequence)
    {
        for (var at = 0; at < sequence.Items.Length; at++)
        {
            if (sequence.Items[at] is not ScalarNode { Kind: ScalarKind.Text } text)
            {
                return false;
            }

            for (var before = 0; before < at; before++)
            {
                if (((ScalarNode)sequence.Items[before]).Text == text.Text)
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>A test of the whole schema's kind of pattern; the form of an id, by far the most frequent, without an automaton.</summary>
    public static Func<string, bool> PatternOf(string pattern)
    {
        if (pattern == "^[a-z0-9]+(-[a-z0-9]+)*$")
        {
            return KnowledgeLayout.IsId;
        }

        var regex = new Lazy<Regex>(() => new Regex(SchemaLoader.AnchorPattern(pattern), RegexOptions.None, TimeSpan.FromSeconds(5)));
        return text => regex.Value.IsMatch(text);
    }
}
