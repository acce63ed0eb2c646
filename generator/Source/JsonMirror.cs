using Newtonsoft.Json.Linq;

namespace Swapwright.Source;

/// <summary>
/// A tree of nodes as the validator wants it, and the way back: which node a token was made from. Going by the token
/// instead of the validator's dotted path, a key such as <c>chassis.year</c> or <c>a[0]</c> cannot be mistaken for a way down.
/// </summary>
internal sealed class JsonMirror
{
    private readonly Dictionary<JToken, Origin> _origins = new(ReferenceEqualityComparer.Instance);

    private JsonMirror(SourceNode root) => Token = Make(root, new Origin(root, null, null, -1));

    public JToken Token { get; }

    public static JsonMirror Of(SourceNode root) => new(root);

    public Origin OriginOf(JToken token) => _origins[token];

    private JToken Make(SourceNode node, Origin origin)
    {
        JToken token;
        switch (node)
        {
            case MappingNode mapping:
                var made = new JObject();
                foreach (var entry in mapping.Entries)
                {
                    made.Add(new JProperty(entry.Key.Text, Make(entry.Value, new Origin(entry.Value, entry.Key, origin, -1))));
                }

                token = made;
                break;
            case SequenceNode sequence:
                var list = new JArray();
                for (var i = 0; i < sequence.Items.Length; i++)
                {
                    list.Add(Make(sequence.Items[i], new Origin(sequence.Items[i], null, origin, i)));
                }

                token = list;
                break;
            default:
                token = Value((ScalarNode)node);
                break;
        }

        _origins.Add(token, origin);
        return token;
    }

    private static JValue Value(ScalarNode scalar)
    {
        if (scalar.TryGetFlag(out var flag))
        {
            return new JValue(flag);
        }

        if (scalar.TryGetDecimal(out var number))
        {
            // A decimal beyond 64 bits stays a number for the validator, only not a whole one.
            return scalar.Kind == ScalarKind.Integer && number is >= long.MinValue and <= long.MaxValue ? new JValue((long)number) : new JValue(number);
        }

        return scalar.Kind == ScalarKind.Null ? JValue.CreateNull() : JValue.CreateString(scalar.Text);
    }

    /// <summary>Where a value came from: its key in a mapping or its index in a list, and what it stands in.</summary>
    internal sealed class Origin(SourceNode node, ScalarNode? key, Origin? parent, int index)
    {
        public SourceNode Node { get; } = node;

        public ScalarNode? Key { get; } = key;

        public Origin? Parent { get; } = parent;

        public int Index { get; } = index;
    }
}
