using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Load;

namespace Swapwright.Fitting;

/// <summary>Hub on shaft and cover on flywheel: the two that are ordered wrongly most often.</summary>
internal static class LoadJoints
{
    public static ImmutableArray<JointInput> Of(Quantities quantities) => [.. new[] { Hub(quantities), Cover(quantities) }.OfType<JointInput>()];

    private static JointInput? Hub(Quantities quantities)
    {
        if (!quantities.Declared("part", "spline-teeth") || !quantities.Declared("gearbox", "spline-teeth"))
        {
            return null;
        }

        var (plateTeeth, plateWidth) = (quantities.Fitted("spline-teeth"), quantities.Fitted("spline-diameter"));
        var (shaftTeeth, shaftWidth) = (quantities.Of("gearbox", "spline-teeth"), quantities.Of("gearbox", "spline-diameter"));
        var known = plateTeeth is not null && shaftTeeth is not null;
        return new JointInput(
            "Clutch plate on the gearbox's shaft",
            Spline(plateTeeth, plateWidth),
            Spline(shaftTeeth, shaftWidth),
            known ? plateTeeth!.Si.Equals(shaftTeeth!.Si) && (plateWidth is null || shaftWidth is null || Math.Abs(plateWidth.Si - shaftWidth.Si) < 1e-6) : null);
    }

    private static JointInput? Cover(Quantities quantities)
    {
        var (cover, flywheel) = (quantities.FittedWord("cover-pattern"), quantities.FittedWord("flywheel-pattern"));
        return cover is null && flywheel is null ? null : new JointInput("Clutch cover on the flywheel", cover?.Title ?? "", flywheel?.Title ?? "", cover is { } one && flywheel is { } other ? one.Id == other.Id : null);
    }

    private static string Spline(KnownValue? teeth, KnownValue? width) => teeth is null ? "" : string.Create(
        CultureInfo.InvariantCulture, $"{teeth.Declared.Value} teeth{(width is null ? "" : $", {width.Declared}")}");
}
