namespace Swapwright.Worksheets.Gearing;

/// <summary>The tyre as a wheel that rolls.</summary>
public static class Tyre
{
    /// <summary>Outer diameter D = d + 2 W A, all in metres, the aspect a share of one (UN Regulation No. 30, 2.17: section height = 0.01 × nominal aspect ratio × nominal width).</summary>
    public static double Diameter(double width, double aspect, double rim) => rim + (2 * width * aspect);

    /// <summary>Road speed in m/s at 1,000 engine revolutions a minute: v = π D n ∕ (i_gear i_final), slip and sinkage of the tyre left out.</summary>
    public static double SpeedAt1000(double diameter, double gear, double final) => Math.PI * diameter * (1000.0 / 60) / (gear * final);
}
