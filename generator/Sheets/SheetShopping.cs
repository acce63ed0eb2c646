using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Belts;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Sheets;

/// <summary>Answers and worksheets → what is to be bought or found, by where it comes from.</summary>
internal sealed class SheetShopping
{
    private readonly KnowledgeBase _kb;

    // The place of each part in a list of all: where it comes from, then title. Parts that are alike in both stay as they come.
    private readonly Dictionary<Part, int> _listed = new(ReferenceEqualityComparer.Instance);

    private readonly KnownResults<ImmutableArray<ShoppingLine>> _lists = new(500);

    public SheetShopping(KnowledgeBase kb)
    {
        _kb = kb;
        foreach (var group in kb.Parts.All.GroupBy(part => (part.From, part.Title)).OrderBy(group => group.Key.From, StringComparer.Ordinal).ThenBy(group => group.Key.Title, StringComparer.Ordinal))
        {
            var place = _listed.Count;
            foreach (var part in group)
            {
                _listed.Add(part, place);
            }
        }
    }

    /// <param name="parts">What an answer brings.</param>
    public ImmutableArray<ShoppingLine> Of(ImmutableArray<SheetAnswer> answers, Func<Answer, ImmutableArray<Part>> parts, PartSizes sizes)
    {
        List<object?> bringing = [sizes];
        foreach (var at in answers)
        {
            if (at.Answer is { } answer && !parts(answer).IsEmpty)
            {
                bringing.Add(answer);
            }
        }

        return _lists.Of(new MadeFrom([.. bringing]), () => List(answers, parts, sizes));
    }

    private ImmutableArray<ShoppingLine> List(ImmutableArray<SheetAnswer> answers, Func<Answer, ImmutableArray<Part>> parts, PartSizes sizes)
    {
        var places = new Dictionary<Part, int>(ReferenceEqualityComparer.Instance);
        var wanted = new List<(Part Part, ImmutableArray<Position> For)>();
        foreach (var at in answers)
        {
            if (at.Answer is null)
            {
                continue;
            }

            foreach (var part in parts(at.Answer))
            {
                if (!places.TryGetValue(part, out var place))
                {
                    places.Add(part, wanted.Count);
                    wanted.Add((part, [at.Position]));
                }

                // An answer may name a part twice.
                else if (!ReferenceEquals(wanted[place].For[^1], at.Position))
                {
                    wanted[place] = (part, wanted[place].For.Add(at.Position));
                }
            }
        }

        ShoppingLine Line(Part part, ImmutableArray<Position> positions) => sizes.Designations.TryGetValue(part.Id, out var known)
            ? new ShoppingLine(part, known.Length, positions) { Sizes = known }
            : new ShoppingLine(part, sizes.Amounts.GetValueOrDefault(part.Id, 1), positions);
        var lines = wanted.Select(line => Line(line.Part, line.For));
        var beltLines = sizes.Designations.Keys.Select(_kb.Parts.Find).OfType<Part>().Where(part => !places.ContainsKey(part)).Select(part => Line(part, []));
        var cutLines = sizes.Amounts.Where(amount => !places.ContainsKey(_kb.Parts[amount.Key])).Select(amount => new ShoppingLine(_kb.Parts[amount.Key], amount.Value, []));
        return [.. lines.Concat(beltLines).Concat(cutLines).OrderBy(line => _listed[line.Part])];
    }

    /// <summary>How much of each part the worksheets ask for, or which; it goes by nothing else.</summary>
    public static PartSizes Sizes(MeasuredParts measured)
    {
        var amounts = (measured.Hoses?.Purchases ?? []).Select(purchase => KeyValuePair.Create(purchase.Part, purchase.Amount))
            .Concat((measured.Wiring?.Purchases ?? []).Where(purchase => purchase.Part is not null).Select(purchase => KeyValuePair.Create(purchase.Part!, purchase.Amount)))
            .GroupBy(purchase => purchase.Key, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Sum(purchase => purchase.Value), StringComparer.Ordinal);
        var designations = measured.Belts.Select(belt => belt.Result.Recommended).OfType<BeltChoice>().GroupBy(choice => choice.Belt.PartId, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Select(choice => choice.Designation).ToImmutableArray(), StringComparer.Ordinal);
        return amounts.Count == 0 && designations.Count == 0 ? PartSizes.None : new PartSizes(amounts, designations);
    }
}

/// <summary>The worksheets that say how much of a part is bought, or which.</summary>
internal sealed record MeasuredParts(ImmutableArray<FittedBelt> Belts, HoseSheet? Hoses, WiringSheet? Wiring)
{
    // Shared worksheets are the same objects.
    public bool Equals(MeasuredParts? other) => other is not null && Belts == other.Belts && ReferenceEquals(Hoses, other.Hoses) && ReferenceEquals(Wiring, other.Wiring);

    public override int GetHashCode() => HashCode.Combine(Belts, RuntimeHelpers.GetHashCode(Hoses), RuntimeHelpers.GetHashCode(Wiring));
}

/// <param name="Amounts">By part, of what is cut or counted.</param>
/// <param name="Designations">By part, of what is sold in sizes.</param>
internal sealed record PartSizes(Dictionary<string, int> Amounts, Dictionary<string, ImmutableArray<string>> Designations)
{
    public static readonly PartSizes None = new([], []);
}
