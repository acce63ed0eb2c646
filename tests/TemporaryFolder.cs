namespace Swapwright.Tests;

/// <summary>A folder of a test's own, gone when the test is done.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("swapwright-").FullName;

    public void Write(string path, string text)
    {
        var file = System.IO.Path.Combine(Path, path);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
