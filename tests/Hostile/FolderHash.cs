using System.Security.Cryptography;
using System.Text;

namespace Swapwright.Tests.Hostile;

/// <summary>A folder as one value: the names and bytes of everything in it.</summary>
internal static class FolderHash
{
    public static string Of(string folder)
    {
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (path, hash) in Files(folder))
        {
            sum.AppendData(Encoding.UTF8.GetBytes($"{path} {hash}\n"));
        }

        return Convert.ToHexString(sum.GetHashAndReset());
    }

    /// <summary>Path → hash, in ordinal order of the paths.</summary>
    public static SortedDictionary<string, string> Files(string folder) => new(
        Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None })
            .ToDictionary(file => Path.GetRelativePath(folder, file), file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))), StringComparer.Ordinal),
        StringComparer.Ordinal);
}
