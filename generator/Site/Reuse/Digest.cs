using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Swapwright.Site.Reuse;

/// <summary>128 bits of a SHA-256 hash: two inputs with the same digest are taken for equal.</summary>
internal readonly record struct Digest(ulong High, ulong Low)
{
    public const int Size = 16;

    public static Digest Read(ReadOnlySpan<byte> bytes) => new(BinaryPrimitives.ReadUInt64LittleEndian(bytes), BinaryPrimitives.ReadUInt64LittleEndian(bytes[8..]));

    public void Write(Span<byte> bytes)
    {
        BinaryPrimitives.WriteUInt64LittleEndian(bytes, High);
        BinaryPrimitives.WriteUInt64LittleEndian(bytes[8..], Low);
    }
}

/// <summary>Puts inputs one after the other. Each is preceded by its length, so that no two lists run together to the same bytes.</summary>
internal sealed class DigestBuilder
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    public DigestBuilder Add(string text)
    {
        Span<byte> length = stackalloc byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(length, text.Length);
        _hash.AppendData(length);
        _hash.AppendData(Encoding.UTF8.GetBytes(text));
        return this;
    }

    public DigestBuilder Add(ReadOnlySpan<byte> bytes)
    {
        Span<byte> length = stackalloc byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(length, bytes.Length);
        _hash.AppendData(length);
        _hash.AppendData(bytes);
        return this;
    }

    public DigestBuilder Add(Digest digest)
    {
        Span<byte> bytes = stackalloc byte[Digest.Size];
        digest.Write(bytes);
        _hash.AppendData(bytes);
        return this;
    }

    public DigestBuilder AddAll(IReadOnlyCollection<Digest> digests)
    {
        Add(digests.Count);
        foreach (var digest in digests)
        {
            Add(digest);
        }

        return this;
    }

    public DigestBuilder Add(int number)
    {
        Span<byte> bytes = stackalloc byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, number);
        _hash.AppendData(bytes);
        return this;
    }

    /// <summary>The digest of all that was added; the builder begins anew.</summary>
    public Digest Finish()
    {
        Span<byte> bytes = stackalloc byte[SHA256.HashSizeInBytes];
        _hash.GetHashAndReset(bytes);
        return Digest.Read(bytes);
    }
}
