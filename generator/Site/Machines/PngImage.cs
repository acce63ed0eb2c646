using System.Buffers.Binary;

namespace Swapwright.Site.Machines;

/// <summary>
/// A picture of a few flat colours as PNG (W3C Portable Network Graphics, third edition): four bits a dot, a palette, no filter.
/// It is packed here and not by the system's library, whose bytes differ from machine to machine.
/// </summary>
/// <remarks>Packing: DEFLATE with its fixed codes (RFC 1951, 3.2.6); what repeats is looked for one byte and one row before, which is where flat colours repeat.</remarks>
internal sealed class PngImage(int width, int height, IReadOnlyList<(byte Red, byte Green, byte Blue)> palette)
{
    private readonly byte[] _dots = new byte[width * height];

    public void Fill(int left, int top, int wide, int high, int colour)
    {
        for (var y = Math.Max(0, top); y < Math.Min(height, top + high); y++)
        {
            for (var x = Math.Max(0, left); x < Math.Min(width, left + wide); x++)
            {
                _dots[(y * width) + x] = (byte)colour;
            }
        }
    }

    public byte[] Write()
    {
        using var file = new MemoryStream();
        file.Write([0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]);
        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        (head[8], head[9]) = (4, 3);
        Chunk(file, "IHDR"u8, head);
        Chunk(file, "PLTE"u8, [.. palette.SelectMany(colour => new[] { colour.Red, colour.Green, colour.Blue })]);
        Chunk(file, "IDAT"u8, Packed(Rows()));
        Chunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    private int Stride => 1 + ((width + 1) / 2);

    private byte[] Rows()
    {
        var rows = new byte[Stride * height];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                rows[(y * Stride) + 1 + (x / 2)] |= (byte)(_dots[(y * width) + x] << (x % 2 == 0 ? 4 : 0));
            }
        }

        return rows;
    }

    private byte[] Packed(byte[] data)
    {
        var bits = new BitWriter();
        bits.Bytes(0x78, 0x01);
        bits.Low(1, 1);
        bits.Low(1, 2);
        for (var at = 0; at < data.Length;)
        {
            var (distance, length) = (1, Repeats(data, at, 1));
            if (Repeats(data, at, Stride) is var above && above > length)
            {
                (distance, length) = (Stride, above);
            }

            if (length < 3)
            {
                bits.Symbol(data[at++]);
            }
            else
            {
                bits.Copy(length, distance);
                at += length;
            }
        }

        bits.Symbol(256);
        return bits.Finish(Adler(data));
    }

    private static int Repeats(byte[] data, int at, int distance)
    {
        var length = 0;
        while (at >= distance && length < 258 && at + length < data.Length && data[at + length] == data[at + length - distance])
        {
            length++;
        }

        return length;
    }

    private static void Chunk(MemoryStream file, ReadOnlySpan<byte> name, ReadOnlySpan<byte> content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        file.Write(number);
        file.Write(name);
        file.Write(content);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc([.. name, .. content]));
        file.Write(number);
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var one in bytes)
        {
            crc ^= one;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc >> 1) ^ ((crc & 1) * 0xEDB88320);
            }
        }

        return ~crc;
    }

    private static uint Adler(byte[] data)
    {
        var (low, high) = (1u, 0u);
        foreach (var one in data)
        {
            low = (low + one) % 65521;
            high = (high + low) % 65521;
        }

        return (high << 16) | low;
    }
}
