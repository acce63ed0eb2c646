using System.Collections.Frozen;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>Reads the facts of an entity against their declarations.</summary>
internal sealed class FactBinder(BindingContext context, Vocabulary vocabulary, Func<string, IReadOnlyCollection<string>> idsOfKind)
{
    /// <summary>The facts under <c>facts</c>; a required fact that is missing is reported at <paramref name="owner"/>.</summary>
    public FrozenDictionary<string, FactValue> Bind(string subject, NodeReader entity, string id, Place owner)
    {
        var values = new Dictionary<string, FactValue>(StringComparer.Ordinal);
        var declared = vocabulary.Facts.All.Where(fact => fact.Subject == subject).ToList();
        if (entity.Get("facts") is MappingNode mapping)
        {
            // A null takes a fact away that `like` would bring, and says nothing where there is none to take.
            foreach (var entry in mapping.Entries.Where(entry => !IsNull(entry.Value)))
            {
                if (vocabulary.Fact(subject, entry.Key.Text) is not { } declaration)
                {
                    context.Unknown(FindingKinds.Vocabulary, $"fact of a {subject}", entry.Key.Text, declared.Select(fact => fact.Id), entry.Key.Place);
                }
                else if (entry.Value is ScalarNode scalar && Value(declaration, scalar) is { } value)
                {
                    values[entry.Key.Text] = value;
                }
            }
        }

        foreach (var missing in declared.Where(fact => !fact.Optional && !values.ContainsKey(fact.Id) && !Mentions(entity, fact.Id)))
        {
            context.Report(FindingKinds.Vocabulary, $"`{id}` does not say `{missing.Name}`", owner, $"Add `{missing.Id}` under `facts`, or declare the fact `optional: true`.", new RelatedPlace("declared here", missing.Place));
        }

        return values.ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>A value as a fact's declaration wants it; null where it does not fit (then reported).</summary>
    public FactValue? Value(FactDeclaration declaration, ScalarNode scalar)
    {
        switch (declaration.Type)
        {
            case FactType.Flag:
                if (scalar.Kind == ScalarKind.Flag)
                {
                    var yes = NodeReader.IsTrue(scalar);
                    return new FactValue(FactType.Flag, yes ? "yes" : "no", yes ? 1 : 0, scalar.Place);
                }

                context.Report(FindingKinds.Vocabulary, $"`{declaration.Name}` is a yes-or-no fact, not `{scalar.Text}`", scalar.Place, "Write `true` or `false`.");
                return null;
            case FactType.Number:
                return new NodeReader(context, null).Quantity(scalar, declaration.Unit, declaration.Min, declaration.Max, "Check the number and its unit; the range of a fact can be widened in the vocabulary.") is { } typed && typed.Normalized() is var number
                    ? new FactValue(FactType.Number, number.ToString(CultureInfo.InvariantCulture), number, scalar.Place)
                    : null;
            case FactType.Reference:
                var ids = idsOfKind(declaration.To ?? "part");
                if (ids.Contains(scalar.Text))
                {
                    return new FactValue(FactType.Reference, scalar.Text, 0, scalar.Place);
                }

                context.Unknown(FindingKinds.Reference, declaration.To ?? "part", scalar.Text, ids, scalar.Place);
                return null;
            default:
                var rank = declaration.RankOf(scalar.Text);
                if (rank >= 0)
                {
                    return new FactValue(FactType.OneOf, scalar.Text, rank, scalar.Place);
                }

                context.Unknown(FindingKinds.Vocabulary, $"value of `{declaration.Name}`", scalar.Text, declaration.Options.Select(option => option.Id), scalar.Place);
                return null;
        }
    }

    private static bool Mentions(NodeReader entity, string fact) => entity.Get("facts") is MappingNode mapping && mapping.TryGet(fact, out var entry) && !IsNull(entry.Value);

    private static bool IsNull(SourceNode node) => node is ScalarNode { Kind: ScalarKind.Null };
}
