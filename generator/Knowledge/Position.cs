using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>A group of positions, in the order in which a guide lists them.</summary>
/// <param name="Section"><c>drive</c> or <c>control</c> where a guide shows it beside the gearbox or the ECU; empty elsewhere.</param>
public sealed record VehicleSystem(string Id, string Title, string About, string Section, Place Place);

/// <summary>One place on the vehicle that a guide must settle.</summary>
/// <param name="System">The id of its <see cref="VehicleSystem"/>.</param>
/// <param name="Safety">fuel, brakes, … where a wrong answer can hurt; null elsewhere.</param>
public sealed record Position(string Id, string Title, string System, string About, Condition Applies, string? Safety, Place Place);
