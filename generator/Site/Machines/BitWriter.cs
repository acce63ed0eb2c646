using System.Numerics;

namespace Swapwright.Site.Machines;

/// <summary>The bits of a DEFLATE stream with fixed codes (RFC 1951): numbers begin with their lowest bit, codes with their highest.</summary>
internal sealed class BitWriter
{
    private readonly List<byte> _bytes = [];
    private uint _held;
    private int _count;

    public void Bytes(params ReadOnlySpan<byte> bytes) => _bytes.AddRange(bytes);

    public void Low(uint value, int count)
    {
        for (var bit = 0; bit < count; bit++)
        {
            _held |= ((value >> bit) & 1) << _count;
            if (++_count == 8)
            {
                _bytes.Add((byte)_held);
                (_held, _count) = (0, 0);
            }
        }
    }

    /// <summary>A literal byte, the end (256) or a length's symbol.</summary>
    public void Symbol(int symbol)
    {
        var (code, count) = symbol switch
        {
            < 144 => (0x30 + symbol, 8),
            < 256 => (0x190 + symbol - 144, 9),
            < 280 => (symbol - 256, 7),
            _ => (0xC0 + symbol - 280, 8),
        };
        High((uint)code, count);
    }

    /// <summary>The bytes that stand <paramref name="distance"/> before, 3 to 258 of them.</summary>
    public void Copy(int length, int distance)
    {
        if (length == 258)
        {
            Symbol(285);
        }
        else
        {
            Ranged(length - 3, 2, symbol => Symbol(257 + symbol));
        }

        Ranged(distance - 1, 1, symbol => High((uint)symbol, 5));
    }

    public byte[] Finish(uint check)
    {
        if (_count > 0)
        {
            Low(0, 8 - _count);
        }

        Bytes((byte)(check >> 24), (byte)(check >> 16), (byte)(check >> 8), (byte)check);
        return [.. _bytes];
    }

    // Lengths and distances share one scheme: 2^split symbols for each number of bits that follow.
    private void Ranged(int value, int split, Action<int> symbol)
    {
        var extra = Math.Max(0, BitOperations.Log2((uint)Math.Max(1, value)) - split);
        symbol((extra << split) + (value >> extra));
        Low((uint)value & ((1u << extra) - 1), extra);
    }

    private void High(uint code, int count)
    {
        for (var bit = count - 1; bit >= 0; bit--)
        {
            Low((code >> bit) & 1, 1);
        }
    }
}
