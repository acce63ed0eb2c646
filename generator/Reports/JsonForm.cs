using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Reports;

/// <summary>What the JSON forms share: camelCase, quantities with their unit, places, LF line ends.</summary>
internal static class JsonForm
{
    private static readonly SearchValues<byte> s_leads = SearchValues.Create((byte)0xD8, (byte)0xE2);

    private static readonly JsonWriterOptions s_options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>();
        Write(buffer, write);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>The same as UTF-8, for files that would be long texts.</summary>
    public static void Write(ArrayBufferWriter<byte> buffer, Action<Utf8JsonWriter> write)
    {
        var start = buffer.WrittenCount;
        using (var json = new Utf8JsonWriter(buffer, s_options))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }

        MakeVisible(buffer, start);
        buffer.Write("\n"u8);
    }

    /// <summary>The value of one member of an object as UTF-8, as it stands where that is the whole.</summary>
    public static byte[] Piece(string name, Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>();
        Write(buffer, write);
        return buffer.WrittenSpan[$"{{\n  \"{name}\": ".Length..^"\n}\n".Length].ToArray();
    }

    // The encoder writes marks that turn the direction of writing as they are. They can only stand within a text, so an escape says the same.
    private static void MakeVisible(ArrayBufferWriter<byte> buffer, int start)
    {
        if (!HasHidden(buffer.WrittenSpan[start..]))
        {
            return;
        }

        var json = Encoding.UTF8.GetString(buffer.WrittenSpan[start..]);
        var visible = new StringBuilder(json.Length + 64);
        foreach (var character in json)
        {
            visible.Append(IsHidden(character) ? string.Create(CultureInfo.InvariantCulture, $"\\u{(int)character:X4}") : character.ToString());
        }

        var before = buffer.WrittenSpan[..start].ToArray();
        buffer.ResetWrittenCount();
        buffer.Write(before);
        buffer.Write(Encoding.UTF8.GetBytes(visible.ToString()));
    }

    // The first bytes that hidden characters have as UTF-8.
    private static bool HasHidden(ReadOnlySpan<byte> json)
    {
        for (var at = json.IndexOfAny(s_leads); at >= 0; at = json.IndexOfAny(s_leads))
        {
            if (Rune.DecodeFromUtf8(json[at..], out var rune, out var length) == OperationStatus.Done && rune.IsBmp && IsHidden((char)rune.Value))
            {
                return true;
            }

            json = json[(at + Math.Max(length, 1))..];
        }

        return false;
    }

    private static bool IsHidden(char character) =>
        character is '\u061C' or '\u200E' or '\u200F' or (>= '\u2028' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    public static void Object(this Utf8JsonWriter json, string name, Action write)
    {
        json.WriteStartObject(name);
        write();
        json.WriteEndObject();
    }

    public static void Array<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            write(item);
        }

        json.WriteEndArray();
    }

    public static void Objects<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write) =>
        json.Array(name, items, item =>
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        });

    public static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> texts) => json.Array(name, texts, json.WriteStringValue);

    /// <summary>Text, or null where there is none.</summary>
    public static void Text(this Utf8JsonWriter json, string name, string? text)
    {
        if (string.IsNullOrEmpty(text))
        {
            json.WriteNull(name);
        }
        else
        {
            json.WriteString(name, text);
        }
    }

    public static void Place(this Utf8JsonWriter json, string name, Place place) => json.Object(name, () =>
    {
        json.WriteString("file", place.File);
        json.WriteNumber("line", place.Line);
        json.WriteNumber("column", place.Column);
        json.WriteNumber("endLine", place.EndLine);
        json.WriteNumber("endColumn", place.EndColumn);
    });

    /// <param name="decimals">Rounded to these: no instrument in a workshop reads finer.</param>
    public static void Quantity(this Utf8JsonWriter json, string name, double value, string unit, int decimals = 1) => json.Object(name, () =>
    {
        json.WriteNumber("value", Math.Round((decimal)value, decimals));
        json.WriteString("unit", unit);
    });

    /// <summary>A number whose unit stands elsewhere, such as with its axis.</summary>
    public static void Plain(this Utf8JsonWriter json, string name, double value) => json.WriteNumber(name, Math.Round((decimal)value, 4));

    public static void Range(this Utf8JsonWriter json, string name, Range3 range, string unit) => json.Object(name, () =>
    {
        json.WriteNumber("least", range.Least);
        json.WriteNumber("likely", range.Likely);
        json.WriteNumber("most", range.Most);
        json.WriteString("unit", unit);
    });

    public static void Combination(this Utf8JsonWriter json, string name, Witness witness) => json.Object(name, () =>
    {
        json.WriteString("chassis", witness.Chassis);
        json.WriteString("donor", witness.Donor);
        json.Object("choices", () =>
        {
            foreach (var (choice, option) in witness.Choices)
            {
                json.WriteString(choice, option);
            }
        });
    });
}
