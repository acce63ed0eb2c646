namespace Swapwright.Benchmarks.Bases;

/// <summary>How large a knowledge base is drawn.</summary>
/// <param name="Rules">All rules but the planted ones.</param>
/// <param name="Faults">How many faults are planted; the kinds take turns.</param>
internal sealed record BaseSize(int Chassis, int Donors, int Choices, int Positions, int Rules, int Seed, int Faults = 0);

/// <summary>A fault that was put into a base on purpose.</summary>
/// <param name="Finding">The id of the finding that it must give.</param>
/// <param name="File">The file in which the finding must stand.</param>
/// <param name="Name">A name that its message must hold.</param>
internal sealed record PlantedFault(string Finding, string File, string Name);
