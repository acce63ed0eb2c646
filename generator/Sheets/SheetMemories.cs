using System.Collections.Concurrent;

namespace Swapwright.Sheets;

/// <summary>
/// The memory that each worker has of the pair of chassis and donor it is at: the guides of a pair follow each other and differ in
/// little. What was known of the pair before is let go.
/// </summary>
internal sealed class SheetMemories
{
    // A worker gets back what it gave.
    private readonly ConcurrentBag<(int Chassis, int Donor, SheetMemory Memory)> _idle = [];

    /// <summary>For one worker alone, until it gives it back.</summary>
    public SheetMemory Take(int chassis, int donor) =>
        _idle.TryTake(out var last) && last.Chassis == chassis && last.Donor == donor ? last.Memory : new SheetMemory();

    public void GiveBack(int chassis, int donor, SheetMemory memory) => _idle.Add((chassis, donor, memory));
}
