using Swapwright.Benchmarks.Bases;
using Swapwright.Source;

namespace Swapwright.Benchmarks.Functions;

/// <summary>A drawn base of 200 rules.</summary>
internal static class SmallBase
{
    public static LargeBase Drawn { get; } = LargeBase.Of(new BaseSize(Chassis: 8, Donors: 12, Choices: 10, Positions: 40, Rules: 200, Seed: 1));

    public static SourceTree Read()
    {
        var folder = Directory.CreateTempSubdirectory("swapwright-benchmarks-").FullName;
        try
        {
            MakeBase.Write(Drawn, folder);
            return KnowledgeFolder.Read(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
