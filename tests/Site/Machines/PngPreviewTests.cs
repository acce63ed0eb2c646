using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Swapwright.Site.Machines;

namespace Swapwright.Tests.Site.Machines;

/// <summary>The picture as PNG, read back with the platform's own inflater and checksums (W3C PNG, third edition; RFC 1950, 1951).</summary>
public sealed class PngPreviewTests
{
    private static readonly PreviewLines s_preview = new("Quillet transplants", "Marn 16, 1992–94", "Quillet C", "own gearbox", "48–70 hours", "1,480–2,720 EUR", "Invented scenario.");

    [Fact]
    public void Png_Guide_IsAWholePictureOf1200By630()
    {
        var png = PreviewPicture.Png(s_preview);
        var chunks = Chunks(png);

        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png[..8]);
        Assert.Equal(["IHDR", "PLTE", "IDAT", "IEND"], chunks.Select(chunk => chunk.Name));
        Assert.Equal(1200, BinaryPrimitives.ReadInt32BigEndian(chunks[0].Content));
        Assert.Equal(630, BinaryPrimitives.ReadInt32BigEndian(chunks[0].Content.AsSpan(4)));
        Assert.Equal([4, 3, 0, 0, 0], chunks[0].Content[8..]);
        Assert.InRange(png.Length, 2_000, 40_000);

        var rows = Rows(chunks[2].Content);
        Assert.Equal(630 * 601, rows.Length);
        Assert.Equal(PreviewTone.Deep, Dot(rows, 600, 4));
        Assert.Equal(PreviewTone.Card, Dot(rows, 1130, 130));
        Assert.Equal(PreviewTone.Ink, Dot(rows, 60, 180));
        Assert.Equal(PreviewTone.Paper, Dot(rows, 20, 620));
        Assert.Contains(PreviewTone.Ink, Enumerable.Range(90, 400).Select(x => Dot(rows, x, 180)));
    }

    [Fact]
    public void Png_LongAndForeignWords_StayOnTheirCard()
    {
        var rows = Rows(Chunks(PreviewPicture.Png(s_preview with { Donor = new string('ж', 300) }))[2].Content);

        Assert.All(Enumerable.Range(1145, 50), x => Assert.Equal(PreviewTone.Paper, Dot(rows, x, 190)));
    }

    [Theory]
    [InlineData('A', ".###.|#...#|#...#|#...#|#####|#...#|#...#")]
    [InlineData('1', "..#..|.##..|..#..|..#..|..#..|..#..|.###.")]
    public void Letter_IsDrawnBlockByBlock(char letter, string rows)
    {
        var drawn = Enumerable.Range(0, BlockLetters.High).Select(row => string.Concat(Enumerable.Range(0, BlockLetters.Wide).Select(column => BlockLetters.IsFilled(letter, column, row) ? '#' : '.')));

        Assert.Equal(rows, string.Join('|', drawn));
    }

    private static PreviewTone Dot(byte[] rows, int x, int y) => (PreviewTone)((rows[(y * 601) + 1 + (x / 2)] >> (x % 2 == 0 ? 4 : 0)) & 15);

    // The inflater checks the sum at the end of the stream as well.
    private static byte[] Rows(byte[] packed)
    {
        using var inflater = new ZLibStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var rows = new MemoryStream();
        inflater.CopyTo(rows);
        return rows.ToArray();
    }

    private static List<(string Name, byte[] Content)> Chunks(byte[] png)
    {
        var chunks = new List<(string, byte[])>();
        for (var at = 8; at < png.Length;)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at));
            var named = png.AsSpan(at + 4, length + 4);
            Assert.Equal(Crc(named), BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at + 8 + length)));
            chunks.Add((Encoding.ASCII.GetString(named[..4]), named[4..].ToArray()));
            at += 12 + length;
        }

        return chunks;
    }

    // The check value of this CRC over "123456789" is CBF43926 (W3C PNG, annex D; the catalogue value of CRC-32).
    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var one in bytes)
        {
            crc ^= one;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320 : crc >> 1;
            }
        }

        return ~crc;
    }
}
