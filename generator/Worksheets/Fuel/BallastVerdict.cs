using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Fuel;

/// <summary>Keep the ballast resistors, by-pass them or add some.</summary>
internal readonly record struct BallastVerdict(string Words, FigureWeight Weight)
{
    /// <param name="needed">Series resistance that the driver asks for, ohms; nought or less where it asks for none.</param>
    /// <param name="fitted">Series resistance in the feed, ohms; nought where there is none.</param>
    public static BallastVerdict Of(InjectorDriver driver, double needed, double fitted, BallastWork work) => (needed > 0, fitted > 0) switch
    {
        (true, true) when fitted + 1e-9 < needed => new("the ballast resistors are too small, and the driver is overloaded: fit larger ones", FigureWeight.Bad),
        (true, true) => new(work == BallastWork.Added ? "add the ballast resistors" : "keep the ballast resistors", FigureWeight.Good),
        (true, false) => new("the driver is overloaded: add ballast resistors, or injectors of more ohms", FigureWeight.Bad),
        (false, true) => new(driver == InjectorDriver.PeakHold ? "the driver needs no ballast resistors, which only make the injectors slow: by-pass them" : "no ballast resistors are needed: by-pass them", FigureWeight.Caution),
        _ => new(work == BallastWork.LeftOff ? "no ballast resistors: by-pass the pack where the loom has one" : "no ballast resistors are needed", FigureWeight.Good),
    };
}
