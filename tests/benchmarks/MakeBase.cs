using System.Globalization;
using Swapwright.Benchmarks.Bases;

namespace Swapwright.Benchmarks;

/// <summary>Draws a knowledge base and writes it into a folder of its own; what was planted goes beside it.</summary>
internal static class MakeBase
{
    public static int Run(string folder, Dictionary<string, int> options)
    {
        if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any())
        {
            Console.Error.WriteLine($"`{folder}` is not empty; name a folder that is not there yet");
            return 2;
        }

        var size = new BaseSize(
            options.GetValueOrDefault("chassis", 60),
            options.GetValueOrDefault("donors", 200),
            options.GetValueOrDefault("choices", 24),
            options.GetValueOrDefault("positions", 300),
            options.GetValueOrDefault("rules", 5000),
            options.GetValueOrDefault("seed", 1),
            options.GetValueOrDefault("faults", 0));
        var drawn = LargeBase.Of(size);
        Write(drawn, folder);
        if (size.Faults > 0)
        {
            File.WriteAllLines(folder.TrimEnd('/') + ".planted.txt", drawn.Planted.Select(fault => $"{fault.Finding} {fault.File} {fault.Name}"));
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{drawn.Files.Count} files, {drawn.Planted.Length} planted faults"));
        return 0;
    }
    public static void Write(LargeBase drawn, string folder)
    {
        foreach (var (path, text) in drawn.Files)
        {
            var file = Path.Combine(folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
        }
    }
}
