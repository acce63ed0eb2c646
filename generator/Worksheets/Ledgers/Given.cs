namespace Swapwright.Worksheets.Ledgers;

/// <summary>A number that a worksheet is given, with what a reader is told of where it comes from.</summary>
/// <param name="Si">In the coherent SI unit of its dimension.</param>
public sealed record Given(double Si, FigureInput Input);
