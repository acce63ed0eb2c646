namespace Swapwright.Site.Machines;

/// <summary>A preview in dots, its letters put together from blocks.</summary>
internal sealed class PreviewBlocks(PngImage image) : IPreviewCanvas
{
    public void Box(int x, int y, int width, int height, PreviewTone fill, PreviewTone edge)
    {
        image.Fill(x - 2, y - 2, width + 4, height + 4, (int)edge);
        image.Fill(x + 2, y + 2, width - 4, height - 4, (int)fill);
    }

    public void Hook(int x, int y)
    {
        image.Fill(x - 3, y - 32, 6, 32, (int)PreviewTone.Deep);
        for (var step = 0; step < 16; step++)
        {
            image.Fill(x - step - 3, y - step - 4, (2 * step) + 6, 6, (int)PreviewTone.Deep);
        }
    }

    /// <summary>The largest whole block at which the line is no taller than asked and no longer than the room; what is still too long is cut off.</summary>
    public void Words(string text, int x, int y, int size, int room, PreviewTone tone, bool bold)
    {
        var block = Math.Max(2, Math.Min(size / 9, room / (6 * Math.Max(1, text.Length))));
        var shown = text.Length * 6 * block <= room ? text : $"{text[..Math.Max(0, (room / (6 * block)) - 3)]}...";
        for (var at = 0; at < shown.Length; at++)
        {
            for (var row = 0; row < BlockLetters.High; row++)
            {
                for (var column = 0; column < BlockLetters.Wide; column++)
                {
                    if (BlockLetters.IsFilled(shown[at], column, row))
                    {
                        image.Fill(x + (((at * 6) + column) * block), y - ((BlockLetters.High - row) * block), block + (bold ? Math.Max(1, block / 4) : 0), block, (int)tone);
                    }
                }
            }
        }
    }
}
