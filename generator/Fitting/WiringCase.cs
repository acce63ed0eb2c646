using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Swapwright.Knowledge;

namespace Swapwright.Fitting;

/// <summary>What the wiring of a combination goes by: different answers that fit the same devices to the same harness are one case.</summary>
/// <param name="Harness">The one in use, of the donor or of the chassis.</param>
/// <param name="Devices">In the order of the vocabulary.</param>
/// <param name="Parts">Those that bring wires or leads, or are the donor's plugs.</param>
internal sealed record WiringCase(DonorVariant Donor, ChassisVariant Chassis, HarnessEntry Harness, Ecu? Ecu, ImmutableArray<FittedDevice> Devices, ImmutableArray<Part> Parts)
{
    // Entries are of one base, so that the same entry is the same object.
    public bool Equals(WiringCase? other) =>
        other is not null && ReferenceEquals(Harness, other.Harness) && ReferenceEquals(Ecu, other.Ecu) && ReferenceEquals(Donor, other.Donor) && ReferenceEquals(Chassis, other.Chassis)
        && Devices.AsSpan().SequenceEqual(other.Devices.AsSpan()) && Parts.AsSpan().SequenceEqual(other.Parts.AsSpan(), ReferenceEqualityComparer.Instance);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        hash.Add(RuntimeHelpers.GetHashCode(Harness));
        hash.Add(RuntimeHelpers.GetHashCode(Ecu));
        foreach (var device in Devices)
        {
            hash.Add(device);
        }

        return hash.ToHashCode();
    }
}

/// <summary>A device that is fitted, and where: not always the place that its own entry gives.</summary>
internal readonly record struct FittedDevice(DeviceRole Role, DeviceEntry Entry, BayPoint Place)
{
    public bool Equals(FittedDevice other) => ReferenceEquals(Entry, other.Entry) && Place == other.Place;

    public override int GetHashCode() => HashCode.Combine(RuntimeHelpers.GetHashCode(Entry), Place);
}
