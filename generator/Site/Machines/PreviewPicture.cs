namespace Swapwright.Site.Machines;

/// <summary>What a preview shows of a guide.</summary>
internal sealed record PreviewLines(string Site, string Donor, string Chassis, string Options, string Hours, string Money, string Label);

/// <summary>The colours of a preview, in the order of <see cref="PreviewPicture.Colours"/>.</summary>
internal enum PreviewTone
{
    Paper,
    Card,
    Ink,
    Deep,
    Quiet,
}

/// <summary>What a preview is drawn on.</summary>
internal interface IPreviewCanvas
{
    /// <summary>A filled box with an edge of 4 units about its outline.</summary>
    void Box(int x, int y, int width, int height, PreviewTone fill, PreviewTone edge);

    /// <summary>The hook that goes down from the donor to the chassis, its tip at the given place.</summary>
    void Hook(int x, int y);

    /// <summary>One line on its baseline, in letters as large as asked or as small as the room wants.</summary>
    void Words(string text, int x, int y, int size, int room, PreviewTone tone, bool bold);
}

/// <summary>
/// Draws the picture that is shown where a guide is linked to: 1200 by 630 units, the shape that such previews are cut to
/// (common practice, no source). As SVG for whoever shows that, and as PNG for all others.
/// </summary>
internal static class PreviewPicture
{
    public const int Width = 1200;
    public const int Height = 630;

    /// <summary>Written out, since no style sheet goes with a preview.</summary>
    public static IReadOnlyList<(byte Red, byte Green, byte Blue)> Colours { get; } = [(0xF4, 0xF5, 0xEE), (0xFD, 0xFD, 0xF9), (0x18, 0x20, 0x22), (0x17, 0x49, 0x4D), (0x4D, 0x5A, 0x5B)];

    public static byte[] Svg(PreviewLines preview) => PreviewSvg.Write($"{preview.Donor} into {preview.Chassis}", canvas => Draw(preview, canvas));

    public static byte[] Png(PreviewLines preview)
    {
        var image = new PngImage(Width, Height, Colours);
        Draw(preview, new PreviewBlocks(image));
        return image.Write();
    }

    private static void Draw(PreviewLines preview, IPreviewCanvas canvas)
    {
        canvas.Box(0, 0, Width, Height, PreviewTone.Paper, PreviewTone.Paper);
        canvas.Box(0, 0, Width, 84, PreviewTone.Deep, PreviewTone.Deep);
        canvas.Words(preview.Site, 60, 55, 32, 1080, PreviewTone.Paper, bold: true);

        // The donor goes down into the chassis: two plates and the hook between them.
        canvas.Box(60, 124, 1080, 110, PreviewTone.Card, PreviewTone.Ink);
        canvas.Words(preview.Donor, 90, 199, 56, 1020, PreviewTone.Ink, bold: true);
        canvas.Box(60, 286, 1080, 110, PreviewTone.Card, PreviewTone.Ink);
        canvas.Words(preview.Chassis, 90, 361, 56, 1020, PreviewTone.Ink, bold: true);
        canvas.Hook(120, 266);
        canvas.Words(preview.Options.Length > 0 ? $"into, {preview.Options}" : "into", 160, 270, 28, 980, PreviewTone.Quiet, bold: false);

        Gauge(canvas, 60, "Work", preview.Hours);
        Gauge(canvas, 620, "Money", preview.Money);
        canvas.Words(preview.Label, 60, 600, 24, 1080, PreviewTone.Quiet, bold: false);
    }

    private static void Gauge(IPreviewCanvas canvas, int x, string name, string value)
    {
        canvas.Box(x, 430, 8, 116, PreviewTone.Deep, PreviewTone.Deep);
        canvas.Words(name, x + 30, 462, 28, 460, PreviewTone.Quiet, bold: false);
        canvas.Words(value, x + 30, 526, 54, 460, PreviewTone.Ink, bold: true);
    }
}
