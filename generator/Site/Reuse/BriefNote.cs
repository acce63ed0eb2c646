using System.Collections.Immutable;
using System.Text;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Pages;

namespace Swapwright.Site.Reuse;

/// <summary>What other pages tell of a guide, as bytes for the record: so that they can be made while the guide's own pages are kept.</summary>
internal static class BriefNote
{
    private const int MostItems = 10_000;

    public static ImmutableArray<byte> Write(GuideBrief brief)
    {
        using var bytes = new MemoryStream();
        using (var writer = new BinaryWriter(bytes, Encoding.UTF8, leaveOpen: true))
        {
            var counts = brief.Counts;
            Write(writer, counts.Money);
            Write(writer, counts.Hours);
            Write(writer, counts.Power);
            Write(writer, counts.PowerToMass);
            Write(writer, counts.BuiltShare);
            writer.Write(counts.Plugs);
            writer.Write(counts.PlugsChanged);
            writer.Write(counts.WiresAdded);
            writer.Write(counts.PartsBought);
            writer.Write(counts.Skill);
            Write(writer, counts.Hardest);
            Write(writer, brief.Sheets);
            writer.Write(brief.IsOpen);
        }

        return [.. bytes.GetBuffer().AsSpan(0, (int)bytes.Length)];
    }

    /// <summary>Null where the bytes are no such note.</summary>
    public static GuideBrief? Read(ImmutableArray<byte> note)
    {
        try
        {
            using var reader = new BinaryReader(new MemoryStream([.. note]), Encoding.UTF8);
            var counts = new GuideCounts
            {
                Money = Range(reader),
                Hours = Range(reader),
                Power = Number(reader),
                PowerToMass = Number(reader),
                BuiltShare = Number(reader),
                Plugs = reader.ReadInt32(),
                PlugsChanged = reader.ReadInt32(),
                WiresAdded = reader.ReadInt32(),
                PartsBought = reader.ReadInt32(),
                Skill = reader.ReadString(),
                Hardest = Texts(reader),
            };
            return new GuideBrief(counts, null, Texts(reader), reader.ReadBoolean());
        }
        catch (Exception fault) when (fault is IOException or FormatException or InvalidDataException)
        {
            return null;
        }
    }

    private static void Write(BinaryWriter writer, Range3 range)
    {
        writer.Write(range.Least);
        writer.Write(range.Likely);
        writer.Write(range.Most);
    }

    private static void Write(BinaryWriter writer, decimal? number)
    {
        writer.Write(number.HasValue);
        writer.Write(number ?? 0);
    }

    private static void Write(BinaryWriter writer, ImmutableArray<string> texts)
    {
        writer.Write(texts.Length);
        foreach (var text in texts)
        {
            writer.Write(text);
        }
    }

    private static Range3 Range(BinaryReader reader) => new(reader.ReadDecimal(), reader.ReadDecimal(), reader.ReadDecimal());

    private static decimal? Number(BinaryReader reader)
    {
        var isThere = reader.ReadBoolean();
        var number = reader.ReadDecimal();
        return isThere ? number : null;
    }

    private static ImmutableArray<string> Texts(BinaryReader reader)
    {
        var count = reader.ReadInt32();
        if (count is < 0 or > MostItems)
        {
            throw new InvalidDataException("no note of this program");
        }

        var texts = ImmutableArray.CreateBuilder<string>(count);
        for (var at = 0; at < count; at++)
        {
            texts.Add(reader.ReadString());
        }

        return texts.MoveToImmutable();
    }
}
