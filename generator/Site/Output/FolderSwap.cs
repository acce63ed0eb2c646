using System.Runtime.InteropServices;
using System.Text;

namespace Swapwright.Site.Output;

/// <summary>Two folders change names in one step, so that neither name is without a folder for a moment.</summary>
internal static class FolderSwap
{
    // From the headers of Linux (fcntl.h, linux/fs.h): paths as they are, and exchange in place of replacement.
    private const int AsTheyAre = -100;
    private const uint Exchange = 2;

    /// <returns>False where the system or the disk has no such thing; nothing is done then.</returns>
    public static bool Try(string one, string other)
    {
        if (!OperatingSystem.IsLinux())
        {
            return false;
        }

        try
        {
            return RenameAt(AsTheyAre, Name(one), AsTheyAre, Name(other), Exchange) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            // A C library that is older than the call.
            return false;
        }
    }

    private static byte[] Name(string path) => Encoding.UTF8.GetBytes(path + '\0');

    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    [DllImport("libc", EntryPoint = "renameat2", ExactSpelling = true)]
    private static extern int RenameAt(int oneFolder, byte[] one, int otherFolder, byte[] other, uint how);
}
