using System.Collections.Immutable;

namespace Swapwright.Worksheets.Ledgers;

/// <summary>Gathers a ledger. What is not a finite number never gets onto it: it becomes a gap.</summary>
public sealed class LedgerBuilder(string id, string title)
{
    private readonly ImmutableArray<Figure>.Builder _figures = ImmutableArray.CreateBuilder<Figure>();
    private readonly ImmutableArray<LedgerTable>.Builder _tables = ImmutableArray.CreateBuilder<LedgerTable>();
    private readonly ImmutableArray<LedgerChart>.Builder _charts = ImmutableArray.CreateBuilder<LedgerChart>();
    private readonly ImmutableArray<LedgerGap>.Builder _gaps = ImmutableArray.CreateBuilder<LedgerGap>();
    private readonly ImmutableArray<string>.Builder _notes = ImmutableArray.CreateBuilder<string>();

    public void Add(Figure figure)
    {
        if (double.IsFinite(figure.Value) && figure.From.All(input => double.IsFinite(input.Value)))
        {
            _figures.Add(figure);
        }
        else
        {
            Gap(figure.Title, "its inputs give no finite number", "Check the numbers that it is computed from.");
        }
    }

    public void Add(LedgerTable table) => _tables.Add(table);

    public void Add(LedgerChart chart) => _charts.Add(chart);

    public void Gap(string about, string reason, string mend) => _gaps.Add(new LedgerGap(about, reason, mend));

    public void Note(string sentence) => _notes.Add(sentence);

    public Ledger Build() => new(id, title)
    {
        Figures = _figures.ToImmutable(),
        Tables = _tables.ToImmutable(),
        Charts = _charts.ToImmutable(),
        Gaps = [.. _gaps.Distinct()],
        Notes = [.. _notes.Distinct(StringComparer.Ordinal)],
    };
}
