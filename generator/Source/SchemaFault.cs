using System.Collections.Immutable;
using System.Globalization;
using Newtonsoft.Json.Linq;
using NJsonSchema;
using NJsonSchema.Validation;
using Swapwright.Diagnostics;
using Origin = Swapwright.Source.JsonMirror.Origin;

namespace Swapwright.Source;

/// <summary>How grave a fault of one value is, the gravest first: only that one is reported. Faults of keys all count.</summary>
internal enum FaultRank
{
    Type,
    Listed,
    Form,
    Size,
    Key,
}

/// <summary>One thing that a schema finds wrong, with what is needed to tell causes from consequences.</summary>
/// <param name="At">The value; for a fault of a key, the mapping.</param>
internal sealed record SchemaFault(Origin At, FaultRank Rank, Finding Finding)
{
    /// <summary>The key that is missing.</summary>
    public string? Missing { get; private init; }

    /// <summary>The key that an unknown one most likely stood for.</summary>
    public string? Meant { get; private init; }

    /// <summary>The types that were allowed, in words.</summary>
    public ImmutableArray<string> Types { get; private init; } = [];

    /// <summary>Only one value is allowed here: it marks which of several forms is meant.</summary>
    public bool IsMark { get; private init; }

    public static bool IsTypeError(ValidationError error) => error.Kind is ValidationErrorKind.StringExpected or ValidationErrorKind.NumberExpected
        or ValidationErrorKind.IntegerExpected or ValidationErrorKind.BooleanExpected or ValidationErrorKind.ObjectExpected
        or ValidationErrorKind.ArrayExpected or ValidationErrorKind.NullExpected;

    public static SchemaFault Of(ValidationError error, Origin at)
    {
        if (IsTypeError(error))
        {
            return WrongType(at, SchemaWords.TypesOf(error.Schema.Type));
        }

        var schema = error.Schema;
        var name = SchemaWords.NameOf(at);
        var value = SchemaWords.ValueOf(at.Node);
        return error.Kind switch
        {
            ValidationErrorKind.NoAdditionalPropertiesAllowed => UnknownKey(at, (JProperty)error.Token!, schema),
            ValidationErrorKind.PropertyRequired => MissingKey(at, error.Property!),
            ValidationErrorKind.NotInEnumeration => NotListed(at, schema),
            ValidationErrorKind.PatternMismatch => Value(at, FaultRank.Form, $"{name} must have the form {Written(schema.Pattern!)}, not {value}", FormOf(schema)),
            ValidationErrorKind.StringTooShort when at.Node is ScalarNode { Text.Length: 0 } => Value(at, FaultRank.Size, $"{name} must not be empty", "Write a text."),
            ValidationErrorKind.StringTooShort => Value(at, FaultRank.Size, Sized($"{name} must have at least {schema.MinLength} characters"), "Write more."),
            ValidationErrorKind.StringTooLong => Value(at, FaultRank.Size, Sized($"{name} must have at most {schema.MaxLength} characters, not {((ScalarNode)at.Node).Text.Length}"), "Shorten it."),
            ValidationErrorKind.NumberTooSmall => Value(at, FaultRank.Size, $"{name} must be {Least(schema)}, not {value}", "Correct the number."),
            ValidationErrorKind.NumberTooBig => Value(at, FaultRank.Size, $"{name} must be {Most(schema)}, not {value}", "Correct the number."),
            ValidationErrorKind.NumberNotMultipleOf or ValidationErrorKind.IntegerNotMultipleOf => Value(at, FaultRank.Size, Sized($"{name} must be a multiple of {schema.MultipleOf}, not {value}"), "Correct the number."),
            ValidationErrorKind.TooFewItems => Value(at, FaultRank.Size, Sized($"{name} must have at least {schema.MinItems} {Plural(schema.MinItems, "item")}"), "Add what is missing, or remove the key."),
            ValidationErrorKind.TooManyItems => Value(at, FaultRank.Size, Sized($"{name} must have at most {schema.MaxItems} {Plural(schema.MaxItems, "item")}, not {((SequenceNode)at.Node).Items.Length}"), "Remove items."),
            ValidationErrorKind.TooManyItemsInTuple => Value(at, FaultRank.Size, $"{name} is one item too many", "Remove it."),
            ValidationErrorKind.TooFewProperties => Value(at, FaultRank.Size, Sized($"{name} must have at least {schema.MinProperties} {Plural(schema.MinProperties, "key")}"), "Add what is missing."),
            ValidationErrorKind.TooManyProperties => Value(at, FaultRank.Size, Sized($"{name} must have at most {schema.MaxProperties} {Plural(schema.MaxProperties, "key")}"), "Remove keys."),
            ValidationErrorKind.ItemsNotUnique => Repeated(at, (JArray)error.Token!),
            ValidationErrorKind.ExcludedSchemaValidates => Excluded(at, schema.Not!.ActualSchema),
            _ => Value(at, FaultRank.Form, $"{name} must be {FormatOf(error.Kind)}, not {value}", FormOf(schema)),
        };
    }

    public static SchemaFault WrongType(Origin at, IReadOnlyList<string> types)
    {
        var name = SchemaWords.NameOf(at);
        var allowed = SchemaWords.Listed(types, "or");
        var (message, mend) = at.Node switch
        {
            ScalarNode { Kind: ScalarKind.Null } => ($"{name} is empty; it must be {allowed}", at.Key is null ? "Write a value, or remove the item." : "Write a value after the colon, or remove the key."),
            ScalarNode { IsQuoted: true, Text: var text } when types.Any(type => type != "text") && PlainScalar.KindOf(text) is ScalarKind.Number or ScalarKind.Integer or ScalarKind.Flag
                => ($"{name} must be {allowed}, not {SchemaWords.ValueOf(at.Node)}", "Remove the quotes."),
            ScalarNode scalar when types.Contains("text") && scalar.Kind != ScalarKind.Text => ($"{name} must be {allowed}, not {NotText(scalar)}", $"Put {SchemaWords.Quote(scalar.Text)} in quotes."),
            _ => ($"{name} must be {allowed}, not {SchemaWords.ValueOf(at.Node)}", $"Write {allowed}."),
        };
        return Value(at, FaultRank.Type, message, mend) with { Types = [.. types] };
    }

    public static SchemaFault MissingOneOf(Origin at, IReadOnlyList<string> keys) => new(at, FaultRank.Key, Make(
        StartOf(at.Node),
        keys is [var only] ? $"key {SchemaWords.Quote(only)} is missing" : $"one of the keys {SchemaWords.Names(keys)} is missing",
        $"Add {SchemaWords.Names(keys, "or")}."));

    /// <summary>More than one of the forms fits where only one may.</summary>
    public static SchemaFault Ambiguous(Origin at, List<JsonSchema> fitting)
    {
        var keys = fitting.SelectMany(schema => schema.ActualSchema.RequiredProperties).Distinct(StringComparer.Ordinal).ToList();
        return at.Node is MappingNode && keys.Count > 1
            ? Exclusive(at, keys)
            : Value(at, FaultRank.Form, $"{SchemaWords.NameOf(at)} fits more than one of the forms allowed here", "Write it so that only one of them fits.");
    }

    private static SchemaFault Exclusive(Origin at, List<string> keys) => new(at, FaultRank.Key, Make(
        StartOf(at.Node),
        $"the keys {SchemaWords.Names(keys)} exclude each other",
        "Keep one of them."));

    private static SchemaFault UnknownKey(Origin at, JProperty property, JsonSchema schema)
    {
        var mapping = (MappingNode)at.Node;
        mapping.TryGet(property.Name, out var entry);
        var known = schema.Properties.Keys.ToList();
        var near = NearestName.Of(property.Name, known.Where(name => mapping[name] is null));
        var key = SchemaWords.Quote(property.Name);
        if (near is null && schema.PatternProperties.Count > 0 && known.Count == 0)
        {
            var forms = schema.PatternProperties.Keys.Select(Written).ToList();
            return new SchemaFault(at, FaultRank.Key, Make(entry!.Key.Place, $"key {key} must have the form {SchemaWords.Listed(forms, "or")}", "Rename the key."));
        }

        var finding = near is null
            ? Make(entry!.Key.Place, $"unknown key {key}", (HomeOf(property.Name, schema) is { } home ? $"It is a key of `{home}`: move it there" : "Remove it") + (known.Count == 0 ? "." : $"; known keys here are {SchemaWords.Names(known)}."))
            : Make(entry!.Key.Place, $"unknown key {key}; did you mean `{near}`?", $"Change {key} to `{near}`.");
        return new SchemaFault(at, FaultRank.Key, finding) { Meant = near };
    }

    // A key that is written a level too high or too low is the commonest slip of those who do not know the form by heart.
    private static string? HomeOf(string key, JsonSchema schema)
    {
        for (var around = schema; around is not null; around = around.ParentSchema)
        {
            var home = (around != schema && around.Properties.ContainsKey(key) ? (around as JsonSchemaProperty)?.Name : null)
                ?? around.Properties.Where(inner => inner.Value.ActualSchema.Properties.ContainsKey(key)).Select(inner => inner.Key).FirstOrDefault();
            if (home is not null)
            {
                return home;
            }
        }

        return null;
    }

    private static SchemaFault MissingKey(Origin at, string key) =>
        new(at, FaultRank.Key, Make(StartOf(at.Node), $"key {SchemaWords.Quote(key)} is missing", $"Add {SchemaWords.Quote(key)}.")) { Missing = key };

    private static SchemaFault NotListed(Origin at, JsonSchema schema)
    {
        var allowed = schema.Enumeration.Select(Shown).ToList();
        var name = SchemaWords.NameOf(at);
        var must = allowed.Count == 1 ? $"must be {SchemaWords.Quote(allowed[0])}" : $"must be one of {SchemaWords.Names(allowed)}";
        if (at.Node is not ScalarNode scalar)
        {
            return Value(at, FaultRank.Type, $"{name} {must}, not {SchemaWords.ValueOf(at.Node)}", "Write one of them.") with { Types = [must["must be ".Length..]] };
        }

        var near = NearestName.Of(scalar.Text, allowed);
        return Value(at, FaultRank.Listed, $"{name} {must}, not {SchemaWords.ValueOf(scalar)}" + (near is null ? string.Empty : $"; did you mean `{near}`?"), near is null ? "Write one of them." : $"Change it to `{near}`.") with
        {
            IsMark = allowed.Count == 1,
        };
    }

    private static SchemaFault Repeated(Origin at, JArray list)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        var items = ((SequenceNode)at.Node).Items;
        for (var i = 0; i < items.Length; i++)
        {
            if (!first.TryAdd(list[i].ToString(), i))
            {
                var finding = Make(items[i].Place, $"{SchemaWords.NameOf(at)} has an item twice", "Remove one of the two.") with
                {
                    Related = [new RelatedPlace("the first one is here", items[first[list[i].ToString()]].Place)],
                };
                return new SchemaFault(at, FaultRank.Key, finding);
            }
        }

        throw new ArgumentException("the list holds nothing twice", nameof(list));
    }

    private static SchemaFault Excluded(Origin at, JsonSchema excluded)
    {
        var keys = excluded.RequiredProperties.ToList();
        if (keys.Count > 1)
        {
            return Exclusive(at, keys);
        }

        if (keys is [var key] && at.Node is MappingNode mapping && mapping.TryGet(key, out var entry))
        {
            return new SchemaFault(at, FaultRank.Key, Make(entry.Key.Place, $"key {SchemaWords.Quote(key)} must not stand here", excluded.Description ?? "Remove it."));
        }

        return Value(at, FaultRank.Form, $"{SchemaWords.NameOf(at)} must not be {SchemaWords.ValueOf(at.Node)}", excluded.Description ?? "Write something else.");
    }

    private static SchemaFault Value(Origin at, FaultRank rank, string message, string? mend) => new(at, rank, Make(at.Node.Place, message, mend));

    private static Finding Make(Place place, string message, string? mend) => new(FindingKinds.Schema, message, place) { Mend = mend };

    private static Place StartOf(SourceNode node) => node is MappingNode { Entries: [var first, ..] } ? first.Key.Place : node.Place;

    /// <summary>A pattern as the schema has it, see <see cref="SchemaLoader.AnchorPattern"/>; never cut.</summary>
    private static string Written(string pattern) => $"`{pattern.Replace("\\z", "$", StringComparison.Ordinal)}`";

    private static string NotText(ScalarNode scalar) => scalar.Kind == ScalarKind.Flag ? $"the flag {SchemaWords.Quote(scalar.Text)}" : $"the number {SchemaWords.Quote(scalar.Text)}";

    /// <summary>What the schema itself says about the form: its description and its first example.</summary>
    private static string? FormOf(JsonSchema schema)
    {
        var example = schema.ExtensionData is { } more && more.TryGetValue("examples", out var examples) && examples is IEnumerable<object?> list ? list.FirstOrDefault() : null;
        return (schema.Description, example) switch
        {
            (null, null) => null,
            (null, _) => $"Write it like {SchemaWords.Quote(Shown(example))}.",
            (_, null) => schema.Description,
            _ => $"{schema.Description} Write it like {SchemaWords.Quote(Shown(example))}.",
        };
    }

    private static string Shown(object? value) => value switch
    {
        null => "null",
        true => "true",
        false => "false",
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };

    private static string Plural(int count, string word) => count == 1 ? word : word + "s";

    private static string Sized(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Least(JsonSchema schema) => schema.ExclusiveMinimum is { } above
        ? Sized($"more than {above}")
        : Sized($"{(schema.IsExclusiveMinimum ? "more than" : "at least")} {schema.Minimum}");

    private static string Most(JsonSchema schema) => schema.ExclusiveMaximum is { } below
        ? Sized($"less than {below}")
        : Sized($"{(schema.IsExclusiveMaximum ? "less than" : "at most")} {schema.Maximum}");

    private static string FormatOf(ValidationErrorKind kind) => kind switch
    {
        ValidationErrorKind.DateExpected => "a date such as `2024-05-31`",
        ValidationErrorKind.DateTimeExpected => "a date and time such as `2024-05-31T12:00:00Z`",
        ValidationErrorKind.TimeExpected => "a time such as `12:00:00`",
        ValidationErrorKind.UriExpected => "a web address",
        ValidationErrorKind.EmailExpected => "an electronic mail address",
        _ => "of another form",
    };
}
