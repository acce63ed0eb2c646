using System.ComponentModel;
using Spectre.Console.Cli;
using Swapwright.Findings;
using Swapwright.Source;

namespace Swapwright.Commands;

/// <summary>Exit codes of every command.</summary>
internal static class Exit
{
    public const int Sound = 0;
    public const int ErrorsFound = 1;
    public const int CouldNotRun = 2;
}

/// <summary>A command that takes the knowledge base as its argument.</summary>
internal class KnowledgeSettings : CommandSettings
{
    [CommandArgument(0, "[swap-kb]")]
    [Description("Folder of the knowledge base.")]
    [DefaultValue("swap-kb")]
    public string Folder { get; init; } = "swap-kb";
}

/// <summary>A command that speaks of one combination.</summary>
internal class CombinationSettings : CommandSettings
{
    [CommandArgument(0, "<CHASSIS>")]
    [Description("Chassis variant, by id.")]
    public string Chassis { get; init; } = "";

    [CommandArgument(1, "<DONOR>")]
    [Description("Donor variant, by id.")]
    public string Donor { get; init; } = "";

    [CommandOption("-k|--base <FOLDER>")]
    [Description("Folder of the knowledge base.")]
    [DefaultValue("swap-kb")]
    public string Folder { get; init; } = "swap-kb";
}

internal static class Loading
{
    /// <summary>Reads and checks a folder.</summary>
    /// <param name="examine">Hold the whole space against the checks, which a question about one combination does not need.</param>
    /// <param name="beyond">Bytes of memory that the command fills and keeps besides.</param>
    /// <exception cref="ArgumentProblemException">There is no such folder, or it cannot be read.</exception>
    public static Proof Load(string folder, bool examine, CancellationToken cancellation, long beyond = 0)
    {
        RequireBase(folder);
        Headroom.Allow(beyond);
        try
        {
            return Proof.Of(folder, examine, cancellation);
        }
        catch (Exception problem) when (problem is UnauthorizedAccessException or IOException)
        {
            throw new ArgumentProblemException($"`{folder}` cannot be read: {problem.Message}");
        }
    }

    /// <summary>Looks whether a folder may hold a knowledge base; an empty one may become one.</summary>
    /// <exception cref="ArgumentProblemException">There is no such folder, it cannot be read, or it holds something else.</exception>
    public static void RequireBase(string folder)
    {
        if (!Directory.Exists(folder))
        {
            throw new ArgumentProblemException(File.Exists(folder) ? $"`{folder}` is a file; name the folder of a knowledge base" : $"no folder `{folder}`; name the folder of a knowledge base, the one with kb.yaml in it");
        }

        try
        {
            if (IsSomethingElse(folder))
            {
                var inside = Directory.EnumerateDirectories(folder).Where(one => File.Exists(Path.Combine(one, "kb.yaml"))).Order(StringComparer.Ordinal).FirstOrDefault();
                throw new ArgumentProblemException($"`{folder}` is no knowledge base; name the folder that holds kb.yaml{(inside is null ? "" : $", as `{inside}`")}");
            }
        }
        catch (Exception problem) when (problem is UnauthorizedAccessException or IOException)
        {
            throw new ArgumentProblemException($"`{folder}` cannot be read: {problem.Message}");
        }
    }

    // Of a folder that was named by mistake, a report would ask to remove everything that lies there.
    private static bool IsSomethingElse(string folder)
    {
        var names = Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName).OfType<string>();
        return names.Any() && !names.Any(name => KnowledgeLayout.TopFiles.ContainsKey(name) || KnowledgeLayout.Folders.ContainsKey(name));
    }
}
