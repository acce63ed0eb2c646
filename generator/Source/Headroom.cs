using System.Runtime;

namespace Swapwright.Source;

/// <summary>
/// Keeps the collector away from the first base that a command reads. Nearly all that is made of it stays until the end, so that
/// collections would walk through all of it several times and free little. What is asked for goes by the size of the files; where it
/// is not granted, and once it is used up, memory is collected as ever.
/// </summary>
internal static class Headroom
{
    // Reading, binding and proving 5,000 rules makes some 70 bytes of each byte of YAML.
    private const long MadeOfAByte = 96;
    private const long Most = 448L << 20;

    // Of what the process may have, no more than one part of so many: where memory is scarce it has to be collected.
    private const int Share = 4;

    // Regions that large arrays take.
    private const long Large = 48L << 20;

    // A process that goes on for hours, or has others' work to do, is better off with its memory collected.
    private static int s_asked = 1;

    private static long s_beyond;

    /// <summary>For a command that reads, says what it has to say and ends.</summary>
    /// <param name="beyond">Bytes that it makes and keeps besides, whatever the size of the files.</param>
    public static void Allow(long beyond = 0)
    {
        s_beyond = beyond;
        s_asked = 0;
    }

    public static void Take(long bytesOfFiles)
    {
        var wanted = Math.Min(Math.Clamp((bytesOfFiles * MadeOfAByte) + s_beyond, Large, Most) + Large, GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / Share);
        if (Interlocked.Exchange(ref s_asked, 1) != 0 || GCSettings.IsServerGC || wanted < 2 * Large)
        {
            return;
        }

        try
        {
            GC.TryStartNoGCRegion(wanted, Large);
        }
        catch (Exception error) when (error is ArgumentOutOfRangeException or InvalidOperationException)
        {
            // More than the process may have: it does with less.
        }
    }
}
