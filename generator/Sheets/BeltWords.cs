using System.Globalization;
using Swapwright.Fitting;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Sheets;

/// <summary>The words of the belt worksheet, as data and pages give them.</summary>
public static class BeltWords
{
    public static string Reason(BeltChoiceReason reason) => reason switch
    {
        BeltChoiceReason.OnlyOneThatFits => "only-one-that-fits",
        BeltChoiceReason.NearestMidTravel => "nearest-mid-travel",
        BeltChoiceReason.FurtherFromMidTravel => "further-from-mid-travel",
        BeltChoiceReason.NearestMark => "nearest-mark",
        BeltChoiceReason.FurtherFromMark => "further-from-mark",
        _ => "within-tolerance",
    };

    /// <summary>Why a belt was chosen and where the adjuster then stands, as one sentence.</summary>
    public static string Chosen(BeltChoice choice)
    {
        var stands = choice.TravelPercent is { } percent ? string.Create(CultureInfo.InvariantCulture, $"{percent:0} % of its travel from the slack end") : "";
        return choice.Reason switch
        {
            BeltChoiceReason.OnlyOneThatFits => $"The only stocked length that can be slipped on and tightened; the adjuster then stands at {stands}.",
            BeltChoiceReason.NearestMidTravel => $"The stocked length that is tight nearest to the middle of the adjuster's travel: at {stands}.",
            BeltChoiceReason.FurtherFromMidTravel => $"Fits too, but is tight further from the middle: the adjuster stands at {stands}.",
            BeltChoiceReason.NearestMark => $"The stocked length that leaves the spring's arm nearest to its nominal mark: at {stands}.",
            BeltChoiceReason.FurtherFromMark => $"Keeps the arm in the middle part of its travel too, but further from the mark: at {stands}.",
            _ => "The pulleys are fixed: this length is the loop's within the tolerance.",
        };
    }

    /// <summary>How a loop is tightened; null where its centres are fixed.</summary>
    public static string? Adjuster(BeltLoop loop) => loop.Adjuster switch
    {
        SlideAdjuster => "slide",
        SwingAdjuster => "swing",
        SpringAdjuster => "spring",
        _ => null,
    };

    public static string Title(FittedBelt belt, string station) => belt.Loop.Pulleys.FirstOrDefault(pulley => pulley.Id == station)?.Title ?? station;

    /// <summary>Between which frequencies a belt is tight enough, Hz.</summary>
    public static string Hertz(ToneRange range) => string.Create(CultureInfo.InvariantCulture, $"{range.LowHz:0} to {range.HighHz:0} Hz");

    /// <summary>The practice of trimming, with its caution.</summary>
    public static string Trim(TrimmedBelt trim) => string.Create(
        CultureInfo.InvariantCulture,
        $"No belt with {trim.Ribs} ribs is stocked: buy the one with {trim.FromRibs} and cut {(trim.FromRibs - trim.Ribs == 1 ? "the outermost rib" : "the outermost ribs")} off along the groove, with a sharp knife and in one go. Cut through the rubber only: a belt whose cord shows or frays at the cut is scrap, and a trimmed belt is looked at again after an hour's running.");

    /// <summary>What to do about a pulley that is out of plane.</summary>
    public static string Shim(FittedBelt belt, PlaneShim shim)
    {
        var by = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(shim.MoveMm):0.0} mm");
        return shim.MoveMm < 0
            ? $"Bring {Title(belt, shim.StationId)} {by} out, away from the gearbox: a spacer of that thickness behind its pulley or bracket."
            : $"Bring {Title(belt, shim.StationId)} {by} in, towards the gearbox: take the spacer out, or have so much taken off its bracket.";
    }

    /// <summary>What is wrong with a loop, as a sentence.</summary>
    public static string Problem(FittedBelt belt, BeltProblem problem)
    {
        string Name(string id) => Title(belt, id);
        return problem switch
        {
            NoStockedBelt none => string.Create(CultureInfo.InvariantCulture, $"No stocked belt with {none.Ribs} ribs fits the adjuster's travel{(none.NearestShorter is { } shorter ? $"; the nearest shorter is {Millimetres(shorter.LengthMm)}" : "")}{(none.NearestLonger is { } longer ? $"; the nearest longer is {Millimetres(longer.LengthMm)}" : "")}."),
            WrapBelowLimit wrap => string.Create(CultureInfo.InvariantCulture, $"The belt embraces {Name(wrap.StationId)} by {double.RadiansToDegrees(wrap.WrapRad):0}° only, where {double.RadiansToDegrees(wrap.LimitRad):0}° are asked."),
            OutOfPlane plane => string.Create(CultureInfo.InvariantCulture, $"{Name(plane.FromId)} and {Name(plane.ToId)} are {Math.Abs(plane.OffsetMm):0.0} mm out of plane, where {plane.AllowedMm:0.0} mm are allowed."),
            RibMismatch ribs => string.Create(CultureInfo.InvariantCulture, $"{Name(ribs.StationId)} has {ribs.Ribs} grooves; the belt uses {ribs.BeltRibs} of them."),
            MissingAdjuster fixedCentres => $"Nothing tightens this belt: only {Millimetres(fixedCentres.LengthMm)} will do, or a stretch belt made for the drive.",
            BelowMinimumDiameter small => string.Create(CultureInfo.InvariantCulture, $"{Name(small.StationId)} is smaller than {small.MinimumMm:0} mm, the least for this profile."),
            FaceMismatch face => $"The belt's face does not suit {Name(face.StationId)}.",
            BeltRunsOverPulley over => $"The belt would run over {Name(over.OverId)} on its way from {Name(over.FromId)} to {Name(over.ToId)}.",
            _ => "The belt cannot run as the pulleys are placed.",
        };
    }

    private static string Millimetres(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:#,0} mm");
}
