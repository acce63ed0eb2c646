using System.Collections.Frozen;
using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>Gathers what binding finds. Nothing here stops at the first mistake.</summary>
internal sealed class BindingContext
{
    // What names these changes no region: a rule that overrides nothing, an answer whose part is missing, a source.
    private static readonly FrozenSet<string> s_outsideTheSpace =
        new[] { "rule", "part", "source", "article", "task", "connector", "signal", "device", "donor", "computed value", "choice=option", "station of this belt", "system" }.ToFrozenSet(StringComparer.Ordinal);

    private readonly List<Finding> _findings = [];
    private readonly HashSet<(string Id, Place Place, string Message)> _seen = [];

    private readonly List<(string Kind, Named Name)> _wanted = [];

    public ImmutableArray<Finding> Findings => [.. _findings];

    /// <summary>The ids that entities name while they are bound, to be looked up when everything is.</summary>
    public IReadOnlyList<(string Kind, Named Name)> Wanted => _wanted;

    /// <summary>Notes that an id of a kind is named at a place.</summary>
    public void Want(string kind, string id, Place place) => _wanted.Add((kind, new Named(id, place)));

    public void Report(FindingKind kind, string message, Place place, string? mend = null, params ReadOnlySpan<RelatedPlace> related) =>
        Add(new Finding(kind, message, place) { Mend = mend, Related = [.. related] });

    /// <summary>Adds what another has gathered, in its order.</summary>
    public void Take(BindingContext other)
    {
        _wanted.AddRange(other._wanted);
        other._findings.ForEach(Add);
    }

    private void Add(Finding finding)
    {
        // Entities made with `like` share nodes: what is wrong in one node is said once.
        if (_seen.Add((finding.Id, finding.Place, finding.Message)))
        {
            _findings.Add(finding);
        }
    }

    /// <summary>Reports an id that nothing carries, with the nearest one that is known.</summary>
    /// <param name="otherwise">What to do where none is near; null where the name of its kind says enough.</param>
    public void Unknown(FindingKind kind, string what, string id, IEnumerable<string> known, Place place, string? otherwise = null)
    {
        var names = known.ToList();
        var near = NearestName.Of(id, names);
        var listed = names.Count is > 0 and <= 12 ? $"Known: {string.Join(", ", names.Order(StringComparer.Ordinal).Select(name => $"`{name}`"))}." : null;
        Add(new Finding(kind, near is null ? $"no {what} `{id}`" : $"no {what} `{id}`; did you mean `{near}`?", place)
        {
            SparesTheSpace = kind == FindingKinds.Reference && s_outsideTheSpace.Contains(what),
            Mend = near is not null ? $"Write `{near}`, or add the {what}." : listed is null ? otherwise ?? $"Add the {what}, or name one that exists." : otherwise is null ? listed : $"{listed} {otherwise}",
        });
    }
}
