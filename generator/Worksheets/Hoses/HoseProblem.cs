using System.Collections.Immutable;

namespace Swapwright.Worksheets.Hoses;

/// <summary>Something that keeps a hose or a port from being right.</summary>
/// <param name="Subject">The hose or port it is about.</param>
public abstract record HoseProblem(string Subject);

/// <summary>More than one hose wants the port, and no tee is at hand.</summary>
public sealed record PortUsedTwice(string PortId, ImmutableArray<string> Hoses) : HoseProblem(PortId)
{
    public bool Equals(PortUsedTwice? other) => other is not null && PortId == other.PortId && Hoses.SequenceEqual(other.Hoses, StringComparer.Ordinal);

    public override int GetHashCode() => PortId.GetHashCode(StringComparison.Ordinal);
}

/// <summary>No hose goes on the port, and nothing says that it is closed or may stay open.</summary>
public sealed record PortLeftOpen(string PortId) : HoseProblem(PortId);

/// <summary>The ends differ in size, and no stepped joiner is at hand.</summary>
public sealed record SizesDiffer(string HoseId, double FromMm, double ToMm) : HoseProblem(HoseId);

/// <summary>The hose that is named goes over neither end.</summary>
public sealed record StockDoesNotFit(string HoseId, string Part, double BoreMm) : HoseProblem(HoseId);

/// <summary>The fuel hose that is named is of a class that does not carry the pressure; null where no class is printed on it.</summary>
public sealed record ClassTooLow(string HoseId, string Part, FuelHoseClass? Class, double? PressureBar) : HoseProblem(HoseId);

/// <summary>The length cannot be worked out, for an end has not been measured.</summary>
public sealed record LengthUnknown(string HoseId) : HoseProblem(HoseId);

/// <summary>A port with a size or a pressure that cannot be, or with the id of another; it is left out.</summary>
public sealed record ImpossiblePort(string PortId) : HoseProblem(PortId);
