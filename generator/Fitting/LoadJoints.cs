using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Load;

namespace Swapwright.Fitting;

/// <summary>Hub on shaft, cover on flywheel, starter on ring gear: what is ordered wrongly most often.</summary>
internal static class LoadJoints
{
    /// <param name="hasClutch">Behind a converter there is neither plate nor cover.</param>
    public static ImmutableArray<JointInput> Of(Quantities quantities, bool hasClutch) =>
        [.. new[] { hasClutch ? Hub(quantities) : null, hasClutch ? Cover(quantities) : null, Starter(quantities) }.OfType<JointInput>()];

    // A starter is made for the ring gear it left the factory beside, unless it says otherwise itself.
    private static JointInput? Starter(Quantities quantities)
    {
        if (quantities.AnswerFor("starter-ring-teeth") is not { } answer)
        {
            return null;
        }

        var ring = quantities.Fitted("ring-gear-teeth");
        var wants = quantities.Part(answer, "starter-ring-teeth") ?? (answer is { Source: "chassis" or "donor", Treatment: not "blank" } ? quantities.Of(answer.Source, "starter-ring-teeth") ?? quantities.Of(answer.Source, "ring-gear-teeth") : null);
        return ring is null && wants is null ? null : new JointInput(
            "Starter on the ring gear",
            wants is null ? "" : $"made for {wants.Declared.Value.ToString(CultureInfo.InvariantCulture)} teeth",
            ring is null ? "" : $"{ring.Declared.Value.ToString(CultureInfo.InvariantCulture)} teeth",
            ring is not null && wants is not null ? ring.Si.Equals(wants.Si) : null);
    }

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
