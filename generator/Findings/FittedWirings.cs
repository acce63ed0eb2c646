using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Findings;

/// <summary>The wiring of some combinations; null where they have no harness to work on.</summary>
internal sealed record FittedWiring(WiringSheet? Sheet, Region Region);

/// <summary>
/// Cuts a region by what its wiring depends on: chassis, donor, ECU, and the answers at the positions that decide devices,
/// the harness and adapter leads. Each different case is computed once for the whole base.
/// </summary>
internal sealed class FittedWirings
{
    /// <summary>A region that falls into more cases than these is not computed.</summary>
    public const int MostCases = 4096;

    private readonly Resolution _resolution;
    private readonly RegionStore _store;
    private readonly KnowledgeBase _kb;
    private readonly WiringAssembly _wiring;
    private readonly ImmutableArray<Position> _deciding;
    private readonly Dictionary<string, WiringSheet?> _sheets = new(StringComparer.Ordinal);

    public FittedWirings(Resolution resolution)
    {
        _resolution = resolution;
        _store = resolution.Store;
        _kb = resolution.Space.Base;
        _wiring = new WiringAssembly(_kb);
        var roles = _kb.Vocabulary.Devices.All.Select(role => role.Position).Append(_kb.Settings.HarnessPosition).OfType<string>().ToHashSet(StringComparer.Ordinal);
        _deciding = [.. _kb.PositionOrder.Where(position => roles.Contains(position.Id) || resolution.At(position.Id).Any(one => Parts(one.Answer).Any(part => part.ChangesWiring)))];
    }

    /// <summary>The cases of a region's buildable combinations; null where there are too many to compute.</summary>
    public ImmutableArray<FittedWiring>? In(Region region)
    {
        var cases = Entities(region);
        foreach (var position in _deciding)
        {
            cases = cases is null ? null : Cut(cases, AnswersAt(position));
        }

        return cases is null ? null : [.. cases.Select(one => new FittedWiring(SheetOf(one), one.Region))];
    }

    private List<Case>? Entities(Region region)
    {
        var space = _resolution.Space;
        var cases = new List<Case>();
        var left = _resolution.BuildableParts.Narrow(region);
        foreach (var chassis in _store.AllowedValues(left, space.Chassis))
        {
            var ofChassis = _store.And(left, _store.Where(space.Chassis, ValueSet.Of(_kb.Chassis.Count, chassis)));
            foreach (var donor in _store.AllowedValues(ofChassis, space.Donor))
            {
                var pair = _store.And(ofChassis, _store.Where(space.Donor, ValueSet.Of(_kb.Donors.Count, donor)));
                cases.AddRange(ByEcu(new Case(_kb.Chassis.All[chassis], _kb.Donors.All[donor], null, [], [], pair)));
                if (cases.Count > MostCases)
                {
                    return null;
                }
            }
        }

        return cases;
    }

    /// <summary>The ECU is what the first choice that binds one binds, as on a sheet.</summary>
    private IEnumerable<Case> ByEcu(Case whole)
    {
        var left = whole.Region;
        var pieces = new List<(Knowledge.Ecu Ecu, Region Region)>();
        foreach (var choice in _kb.Choices.All)
        {
            foreach (var option in choice.Options)
            {
                if (option.Binds is { } binding && _resolution.Space.Bound(binding, whole.Chassis, whole.Donor) is Knowledge.Ecu ecu)
                {
                    var here = _store.And(left, _resolution.Space.WhereChoice(choice.Id, [option.Id]));
                    left = _store.Minus(left, here);
                    pieces.Add((ecu, here));
                }
            }
        }

        return pieces.GroupBy(piece => piece.Ecu.Id, StringComparer.Ordinal)
            .Select(group => whole with { Ecu = group.First().Ecu, Region = _store.OrAll(group.Select(piece => piece.Region)) })
            .Append(whole with { Region = left })
            .Where(one => _resolution.BuildableParts.Intersects(one.Region));
    }

    private List<Case>? Cut(List<Case> cases, List<(string Key, Answer? Answer, Region Region)> pieces)
    {
        var cut = new List<Case>();
        foreach (var one in cases)
        {
            foreach (var (key, answer, where) in pieces)
            {
                var here = _store.And(one.Region, where);
                if (_resolution.BuildableParts.Intersects(here))
                {
                    cut.Add(one with { Keys = one.Keys.Add(key), Answers = answer is null ? one.Answers : one.Answers.Add(answer), Region = here });
                }
            }

            if (cut.Count > MostCases)
            {
                return null;
            }
        }

        return cut;
    }

    /// <summary>What the answers at a position mean for the wiring, and where: disjoint, and everywhere.</summary>
    private List<(string Key, Answer? Answer, Region Region)> AnswersAt(Position position)
    {
        var pieces = new Dictionary<string, (Answer Answer, Region Region)>(StringComparer.Ordinal);
        var left = Region.All;
        foreach (var standing in _resolution.At(position.Id))
        {
            var here = _store.And(standing.Region, left);
            left = _store.Minus(left, here);
            var key = Key(standing.Answer);
            pieces[key] = pieces.TryGetValue(key, out var known) ? (known.Answer, _store.Or(known.Region, here)) : (standing.Answer, here);
        }

        return [.. pieces.Select(piece => (piece.Key, (Answer?)piece.Value.Answer, piece.Value.Region)), ("", null, left)];
    }

    private string Key(Answer answer)
    {
        var fitted = answer.Source == "none" || answer.Treatment == "blank" ? "off" : "on";
        var parts = Parts(answer).Where(part => part.ChangesWiring || !part.Devices.IsEmpty).Select(part => part.Id);
        return $"{fitted} {(answer.Source, answer.Treatment) switch { ("chassis", "move") => "chassis moved", ("chassis", _) => "chassis", _ => "other" }} {string.Join(' ', parts)}";
    }

    private WiringSheet? SheetOf(Case one)
    {
        var key = $"{one.Chassis.Id}|{one.Donor.Id}|{one.Ecu?.Id}|{string.Join('|', one.Keys)}";
        if (!_sheets.TryGetValue(key, out var sheet))
        {
            sheet = _wiring.Assemble(one.Donor, one.Chassis, one.Ecu, position => one.Answers.FirstOrDefault(answer => answer.Position == position), one.Answers.SelectMany(Parts).Distinct());
            _sheets.Add(key, sheet);
        }

        return sheet;
    }

    private IEnumerable<Part> Parts(Answer answer) =>
        new[] { answer.Part }.Concat(answer.Also).Select(id => id is null ? null : _kb.Parts.Find(id)).OfType<Part>();

    /// <param name="Keys">What each deciding position means for the wiring, in their order.</param>
    private sealed record Case(ChassisVariant Chassis, DonorVariant Donor, Knowledge.Ecu? Ecu, ImmutableArray<string> Keys, ImmutableArray<Answer> Answers, Region Region);
}
