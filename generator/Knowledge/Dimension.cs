namespace Swapwright.Knowledge;

/// <summary>What kind of quantity a number is. Quantities of different dimension are never compared or converted.</summary>
public enum Dimension
{
    None,
    Length,
    Area,
    Volume,
    Mass,
    Angle,
    Duration,
    Speed,
    RotationalSpeed,
    Force,
    Torque,
    Power,
    Pressure,
    VolumeFlow,
    Current,
    Voltage,
    Resistance,
    Inductance,
    Temperature,
    Share,
    Frequency,
    Density,

    /// <summary>Mass for energy: the fuel that an engine burns for the work it gives.</summary>
    Consumption,
}
