namespace Swapwright.Tests.Findings;

/// <summary>A folder of its own that is removed at the end.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("knowledge-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
