using System.Runtime.ExceptionServices;
using System.Text;

namespace Swapwright.Site.Output;

/// <summary>Folders that this program may empty and remove: those with its mark, which is also the lock of the run that works in one.</summary>
internal static class OwnFolder
{
    /// <summary>Name of the file by which the program knows a folder for one of its own.</summary>
    public const string Mark = ".swapwright-site";

    private const string MarkText = "Made by swapwright. The next run replaces this whole folder; keep nothing of your own in it.\n";

    private const int Looks = 6;

    public static void RequireOwnOrEmpty(string folder)
    {
        if (File.Exists(folder))
        {
            throw new SiteFolderException($"`{folder}` is a file");
        }

        // Another run may be making the folder or taking it away just now, with the mark as its first file and its last. So files are looked for before their
        // mark, and both several times: a run may have ended between two looks.
        for (var look = 0; look < Looks; look++)
        {
            if (!HasEntries(folder) || HasMark(folder))
            {
                return;
            }
        }

        throw new SiteFolderException($"`{folder}` holds files that swapwright did not make; name an empty or new folder");
    }

    private static bool HasMark(string folder) => File.Exists(Path.Combine(folder, Mark));

    private static bool HasEntries(string folder)
    {
        try
        {
            return Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any();
        }
        catch (DirectoryNotFoundException)
        {
            return false;
        }
    }

    /// <summary>Holds the mark open for as long as the run lasts: a second run cannot open it.</summary>
    public static FileStream Hold(string mark, string target)
    {
        try
        {
            var stream = new FileStream(mark, FileMode.Create, FileAccess.Write, FileShare.None);
            stream.Write(Encoding.UTF8.GetBytes(MarkText));
            stream.Flush();
            return stream;
        }
        catch (IOException fault)
        {
            throw new SiteFolderException($"`{target}` is being written by another run", fault);
        }
    }

    public static void Empty(string folder)
    {
        // The guides of a chassis lie in a folder two levels down; to take those away is most of the work, and goes beside each other.
        var inner = new DirectoryInfo(folder).GetDirectories().Where(entry => entry.LinkTarget is null).SelectMany(entry => entry.GetDirectories()).Where(entry => entry.LinkTarget is null);
        try
        {
            Parallel.ForEach(inner, entry => entry.Delete(recursive: true));
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }

        foreach (var entry in new DirectoryInfo(folder).EnumerateFileSystemInfos())
        {
            if (entry is DirectoryInfo { LinkTarget: null } rest)
            {
                rest.Delete(recursive: true);
            }
            else if (entry.Name != Mark)
            {
                entry.Delete();
            }
        }
    }

    /// <summary>Removes a folder of the program's own, unless another run holds it; that run then empties it.</summary>
    public static void RemoveUnlessTaken(string folder)
    {
        if (!Directory.Exists(folder))
        {
            return;
        }

        try
        {
            using var held = new FileStream(Path.Combine(folder, Mark), FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
            Remove(folder, held);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // What is left carries the mark, so that the next run may take it away.
        }
    }

    /// <summary>
    /// Removes a folder by its held mark, which goes last: whoever dies over it leaves a folder that is still known for the program's own.
    /// </summary>
    public static void Remove(string folder, FileStream held)
    {
        try
        {
            Empty(folder);
            if (OperatingSystem.IsWindows())
            {
                held.Dispose();
            }

            File.Delete(Path.Combine(folder, Mark));
            held.Dispose();
            Directory.Delete(folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Not worth a failed run: the next one empties it.
        }
    }
}
