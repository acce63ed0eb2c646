using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>The findings of one file, bounded, so that a hostile file cannot fill the memory with them.</summary>
internal sealed class FindingList(string path, int most)
{
    private readonly ImmutableArray<Finding>.Builder _findings = ImmutableArray.CreateBuilder<Finding>();

    public int Count => _findings.Count;

    public bool IsFull => _findings.Count >= most;

    public Place WholeFile => Place.Of(path);

    public void Add(Place place, string message, string? mend = null) => Add(new Finding(FindingKinds.Schema, message, place) { Mend = mend });

    public void Add(Finding finding)
    {
        if (_findings.Count < most - 1)
        {
            _findings.Add(finding);
        }
        else if (_findings.Count == most - 1)
        {
            _findings.Add(new Finding(FindingKinds.Schema, "this file has more findings than are listed", finding.Place)
            {
                Mend = "Mend the ones that are listed and check again.",
            });
        }
    }

    public ImmutableArray<Finding> ToImmutable() => _findings.ToImmutable();
}
