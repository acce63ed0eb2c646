using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>What a hose is pushed or screwed on, by the job it does, whichever vehicle it sits on.</summary>
/// <param name="Circuit">vacuum, fuel, coolant, heater, brake-booster, breather or purge.</param>
/// <param name="Position">The position whose answer says whose port it is; null where none does.</param>
/// <param name="OnChassis">Whose it is where no answer says so: the chassis's, else the donor's.</param>
/// <param name="Order">Place in the written order.</param>
public sealed record PortRole(string Id, string Title, string Circuit, string? Position, bool OnChassis, int Order, Place Place);

/// <summary>A hose as the vocabulary declares it: the two ports it joins, wherever both are there.</summary>
/// <param name="Circuit">That of its ports.</param>
/// <param name="Position">The position whose answer says what is done about the hose.</param>
/// <param name="Optional">The port at the other end need not be there: what is left is capped.</param>
public sealed record HoseRole(string Id, string Title, string Circuit, string From, string To, string? Position, bool Optional, int Order, Place Place)
{
    public string Other(string port) => port == From ? To : From;
}

/// <summary>A port as it is on one vehicle or part.</summary>
/// <param name="SizeMm">Outer diameter of what the hose is pushed over.</param>
/// <param name="Kind">barb, thread or quick.</param>
/// <param name="Location">null on a part that lies where the vehicle had its own.</param>
/// <param name="PressureBar">Highest gauge pressure in use; null for suction and open pipes.</param>
/// <param name="Open">Why it may stay open to the air; empty where it may not.</param>
public sealed record PortEntry(string Role, string? Title, decimal SizeMm, string Kind, string Thread, BayPoint? Location, decimal? PressureBar, string Open, Place Place);

/// <summary>Hose that a shop sells.</summary>
/// <param name="BoreMm">Inner diameter; null for a moulded set of several sizes.</param>
/// <param name="Class">Class of SAE J30, on fuel hose.</param>
/// <param name="LengthMm">The piece that the price is for.</param>
/// <param name="Set">Moulded for the place: bought once and not cut from length.</param>
public sealed record HoseGoods(ImmutableArray<string> Circuits, decimal? BoreMm, string? Class, decimal? LengthMm, bool Set);

/// <summary>A stepped joiner, usable either way round.</summary>
public sealed record ReducerGoods(decimal FromMm, decimal ToMm);

/// <summary>What a fuel pump gives at a pressure, as measured.</summary>
public sealed record PumpPoint(decimal PressureBar, decimal LitresAnHour, Place Place);
