using System.Text.Json;

namespace Swapwright.Source;

/// <summary>Schema texts to <see cref="QuickForm"/>s.</summary>
internal sealed class QuickForms(Func<string, string> textOf)
{
    private readonly Dictionary<string, JsonElement> _roots = new(StringComparer.Ordinal);
    private readonly Dictionary<string, QuickForm> _forms = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Func<string, bool>> _patterns = new(StringComparer.Ordinal);

    public QuickForm Load(string file) => At(file, "");

    /// <param name="pointer">As after <c>#</c> in a reference.</param>
    private QuickForm At(string file, string pointer)
    {
        var key = $"{file}#{pointer}";
        if (_forms.TryGetValue(key, out var known))
        {
            return known;
        }

        if (!_roots.TryGetValue(file, out var element))
        {
            using var document = JsonDocument.Parse(textOf(file));
            element = document.RootElement.Clone();
            _roots.Add(file, element);
        }

        // Noted before it is read: a condition holds conditions.
        var form = _forms[key] = new QuickForm();
        foreach (var step in pointer.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!element.TryGetProperty(step, out element))
            {
                form.IsUnknown = true;
                return form;
            }
        }

        Read(form, file, element);
        return form;
    }

    private QuickForm Inner(string file, JsonElement schema)
    {
        var form = new QuickForm();
        Read(form, file, schema);
        return form;
    }

    private void Read(QuickForm form, string file, JsonElement schema)
    {
        if (schema.ValueKind != JsonValueKind.Object)
        {
            form.IsUnknown = true;
            return;
        }

        if (schema.TryGetProperty("$ref", out var reference))
        {
            // What stands beside a reference is passed over by the validator, and a test refuses it.
            var parts = reference.GetString()!.Split('#');
            form.Target = At(parts[0].Length == 0 ? file : parts[0], parts.Length > 1 ? parts[1] : "");
            return;
        }

        foreach (var keyword in schema.EnumerateObject())
        {
            if (!Keyword(form, file, keyword.Name, keyword.Value))
            {
                form.IsUnknown = true;
            }
        }
    }

    private bool Keyword(QuickForm form, string file, string name, JsonElement value)
    {
        switch (name)
        {
            case "$schema" or "$id" or "$comment" or "title" or "description" or "default" or "examples" or "deprecated" or "definitions" or "$defs":
                return true;
            case "type":
                form.Types = value.ValueKind == JsonValueKind.Array ? [.. value.EnumerateArray().Select(type => type.GetString()!)] : [value.GetString()!];
                return true;
            case "enum":
                form.Listed = [.. value.EnumerateArray().Where(one => one.ValueKind == JsonValueKind.String).Select(one => one.GetString()!)];
                return true;
            case "not":
                return Barred(form, value);
            case "minLength" or "maxLength" or "minItems" or "maxItems" or "minProperties" or "maxProperties":
                return Size(form, name, value.GetInt32());
            case "minimum":
                form.Minimum = value.GetDecimal();
                return true;
            case "exclusiveMinimum":
                form.Above = value.GetDecimal();
                return true;
            case "maximum":
                form.Maximum = value.GetDecimal();
                return true;
            case "pattern":
                form.Pattern = Pattern(value.GetString()!);
                return true;
            case "format":
                form.IsDate = true;
                return value.GetString() == "date";
            case "uniqueItems":
                form.UniqueItems = value.GetBoolean();
                return true;
            case "items":
                form.Items = Inner(file, value);
                return true;
            case "required":
                form.Required.AddRange(value.EnumerateArray().Select(key => key.GetString()!));
                return true;
            case "properties":
                foreach (var property in value.EnumerateObject())
                {
                    form.Properties[property.Name] = Inner(file, property.Value);
                }

                return true;
            case "patternProperties":
                form.ByPattern.AddRange(value.EnumerateObject().Select(property => (Pattern(property.Name), Inner(file, property.Value))));
                return true;
            case "additionalProperties":
                form.AllowsOthers = value.ValueKind != JsonValueKind.False;
                form.Others = value.ValueKind == JsonValueKind.Object ? Inner(file, value) : null;
                return true;
            default:
                return false;
        }
    }

    private static bool Barred(QuickForm form, JsonElement schema)
    {
        // Only a list of values can be turned round without knowing what certainly has not the inner form.
        var keywords = schema.ValueKind == JsonValueKind.Object ? schema.EnumerateObject().ToList() : [];
        if (keywords is not [{ Name: "enum" } only])
        {
            return false;
        }

        form.Barred = [.. only.Value.EnumerateArray().Select(one => one.ToString().ToLowerInvariant())];
        return true;
    }

    private static bool Size(QuickForm form, string name, int value)
    {
        switch (name)
        {
            case "minLength":
                form.MinLength = value;
                break;
            case "maxLength":
                form.MaxLength = value;
                break;
            case "minItems":
                form.MinItems = value;
                break;
            case "maxItems":
                form.MaxItems = value;
                break;
            case "minProperties":
                form.MinProperties = value;
                break;
            default:
                form.MaxProperties = value;
                break;
        }

        return true;
    }

    private Func<string, bool> Pattern(string pattern)
    {
        if (!_patterns.TryGetValue(pattern, out var test))
        {
            test = QuickForm.PatternOf(pattern);
            _patterns.Add(pattern, test);
        }

        return test;
    }
}
