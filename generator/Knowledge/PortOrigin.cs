namespace Swapwright.Knowledge;

public enum PortOwner
{
    /// <summary>The position does not apply or has no answer.</summary>
    Nobody,

    /// <summary>The answer leaves the thing off, or the part that is fitted has no such port.</summary>
    LeftOff,

    Chassis,
    Donor,
    Part,
}

/// <summary>Whose port a role gets by the answer at its position. The one place where that is decided.</summary>
public readonly record struct PortOrigin(PortOwner Owner, Part? Part)
{
    public static PortOrigin Of(PortRole role, Answer? answer, EntitySet<Part> parts)
    {
        var own = role.OnChassis ? PortOwner.Chassis : PortOwner.Donor;
        if (role.Position is null)
        {
            return new(own, null);
        }

        if (answer is null)
        {
            return new(PortOwner.Nobody, null);
        }

        if (IsLeftOff(answer))
        {
            // A pipe that is out of use and stays clipped in place has ends all the same: the answer that closes them leaves them there.
            return answer.Closes.Contains(role.Id) ? new(own, null) : new(PortOwner.LeftOff, null);
        }

        if (answer.PartIds.Select(parts.Find).FirstOrDefault(part => part?.Port(role.Id) is not null) is { } carrier)
        {
            return new(PortOwner.Part, carrier);
        }

        return answer.Source switch
        {
            "chassis" => new(PortOwner.Chassis, null),
            "donor" => new(PortOwner.Donor, null),
            // A part that says where its hoses go has said all of them.
            _ when answer.Part is { } id && parts.Find(id) is { Ports.IsEmpty: false } => new(PortOwner.LeftOff, null),
            _ => new(own, null),
        };
    }

    /// <summary>Nothing is fitted at the position, and what led there is closed.</summary>
    public static bool IsLeftOff(Answer answer) => answer is { Source: "none" } or { Treatment: "blank" };

    /// <summary>The port on a chassis and a donor; null where the owner has none.</summary>
    public PortEntry? Entry(PortRole role, ChassisVariant chassis, DonorVariant donor)
    {
        var onDonor = donor.Port(role.Id);
        var onChassis = chassis.Port(role.Id);
        return Owner switch
        {
            // What is kept of the chassis's engine sits where the donor has its own.
            PortOwner.Chassis => role.OnChassis || onDonor?.Location is null || onChassis is null ? onChassis : onChassis with { Location = onDonor.Location },
            PortOwner.Donor => onDonor,
            PortOwner.Part when Part!.Port(role.Id) is { } onPart => onPart.Location is null ? onPart with { Location = (role.OnChassis ? onChassis ?? onDonor : onDonor ?? onChassis)?.Location } : onPart,
            _ => null,
        };
    }
}
