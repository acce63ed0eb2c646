using System.Runtime.InteropServices;
using System.Text;

namespace Swapwright.Site.Output;

/// <summary>A second name for a file, so that a file which did not change is in the new site and the previous one at once.</summary>
internal static class HardLink
{
    /// <returns>False where the system or the disk has no such thing; nothing is made then.</returns>
    public static bool TryMake(string existing, string link) =>
        !OperatingSystem.IsWindows() && Link(Name(existing), Name(link)) == 0;

    private static byte[] Name(string path) => Encoding.UTF8.GetBytes(path + '\0');

    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    [DllImport("libc", EntryPoint = "link", ExactSpelling = true)]
    private static extern int Link(byte[] existing, byte[] link);
}
