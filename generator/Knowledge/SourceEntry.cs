using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>On whose word something is said.</summary>
/// <param name="Kind">measurement, build-log, manual, standard, reader-report or common-practice.</param>
public sealed record SourceEntry(string Id, string Title, string Kind, string? Date, string? By, bool Invented, string About, Place Place);
