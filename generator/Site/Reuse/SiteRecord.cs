using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text;
using Swapwright.Site.Output;

namespace Swapwright.Site.Reuse;

/// <summary>What an earlier run made together: from which inputs, and how its files are known again.</summary>
/// <param name="Files">In the order in which the plan names them.</param>
/// <param name="Note">What else is to be known without making it again; empty where there is nothing.</param>
internal sealed record RecordedWork(Digest Inputs, ImmutableArray<FileStamp> Files, ImmutableArray<byte> Note);

/// <summary>
/// The record of a site, kept in a file beside its folder. It is no part of the site, and nothing is lost with it: without it, or where it
/// does not fit what is found, pages are made again.
/// </summary>
internal sealed class SiteRecord
{
    // A record of another form is as good as none.
    private const string Form = "swapwright record 1";
    private const int MostFilesOfAWork = 1000;
    private const int MostBytesOfANote = 1024 * 1024;

    private readonly IReadOnlyDictionary<string, RecordedWork> _works;

    private SiteRecord(IReadOnlyDictionary<string, RecordedWork> works) => _works = works;

    public static SiteRecord None { get; } = new(new Dictionary<string, RecordedWork>());

    /// <summary>Beside the folder, as its other helpers are.</summary>
    public static string PathOf(string target)
    {
        var place = SiteFolder.RealPlace(target);
        return Path.Combine(Path.GetDirectoryName(place) ?? place, $".{Path.GetFileName(place)}.swapwright-record");
    }

    public bool IsEmpty => _works.Count == 0;

    /// <summary>Bytes of the record of a folder; 0 where there is none to be seen.</summary>
    public static long LengthOf(string target)
    {
        try
        {
            return new FileInfo(PathOf(target)) is { Exists: true } file ? file.Length : 0;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return 0;
        }
    }

    /// <summary>What was made under a name; null where it was made from something else.</summary>
    public RecordedWork? Find(string name, Digest inputs) => _works.TryGetValue(name, out var work) && work.Inputs == inputs ? work : null;

    /// <summary>The record of a folder; an empty one where there is none that can be read.</summary>
    public static SiteRecord Read(string target)
    {
        try
        {
            var path = PathOf(target);
            if (!File.Exists(path))
            {
                return None;
            }

            using var reader = new BinaryReader(new BufferedStream(File.OpenRead(path), 1 << 16), Encoding.UTF8);
            return reader.ReadString() == Form ? new SiteRecord(Works(reader)) : None;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or InvalidDataException or FormatException)
        {
            return None;
        }
    }

    /// <summary>Writes the record of a folder in place of the one before. A disk that does not take it costs the next run time and nothing else.</summary>
    public static void Write(string target, IEnumerable<KeyValuePair<string, RecordedWork>> works)
    {
        var path = PathOf(target);
        var fresh = path + "-new";
        try
        {
            using (var writer = new BinaryWriter(new BufferedStream(File.Create(fresh), 1 << 16), Encoding.UTF8))
            {
                writer.Write(Form);
                foreach (var (name, work) in works.OrderBy(work => work.Key, StringComparer.Ordinal))
                {
                    Write(writer, name, work);
                }

                writer.Write("");
            }

            File.Move(fresh, path, overwrite: true);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Remove(fresh);
        }
    }

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The next run writes over it.
        }
    }

    private static void Write(BinaryWriter writer, string name, RecordedWork work)
    {
        writer.Write(name);
        Span<byte> digest = stackalloc byte[Digest.Size];
        work.Inputs.Write(digest);
        writer.Write(digest);
        writer.Write(work.Files.Length);
        foreach (var file in work.Files)
        {
            writer.Write(file.Length);
            writer.Write(file.Time);
        }

        writer.Write(work.Note.Length);
        writer.Write(work.Note.AsSpan());
    }

    private static Dictionary<string, RecordedWork> Works(BinaryReader reader)
    {
        var works = new Dictionary<string, RecordedWork>(StringComparer.Ordinal);
        Span<byte> digest = stackalloc byte[Digest.Size];
        while (reader.ReadString() is { Length: > 0 } name)
        {
            reader.BaseStream.ReadExactly(digest);
            var inputs = Digest.Read(digest);
            var files = new FileStamp[Bounded(reader.ReadInt32(), MostFilesOfAWork)];
            for (var at = 0; at < files.Length; at++)
            {
                files[at] = new FileStamp(reader.ReadInt64(), reader.ReadInt64());
            }

            var note = new byte[Bounded(reader.ReadInt32(), MostBytesOfANote)];
            reader.BaseStream.ReadExactly(note);
            works[name] = new RecordedWork(inputs, ImmutableCollectionsMarshal.AsImmutableArray(files), ImmutableCollectionsMarshal.AsImmutableArray(note));
        }

        return works;
    }

    private static int Bounded(int number, int most) => number >= 0 && number <= most ? number : throw new InvalidDataException("no record of this program");
}
