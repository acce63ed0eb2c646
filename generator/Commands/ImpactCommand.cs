using System.ComponentModel;
using System.Globalization;
using Spectre.Console;
using Spectre.Console.Cli;
using Swapwright.Findings;
using Swapwright.Impact;
using Swapwright.Reports;

namespace Swapwright.Commands;

/// <summary><c>swapwright impact</c>: what changes for readers between two knowledge bases.</summary>
internal sealed class ImpactCommand : Command<ImpactCommand.Settings>
{
    private const int SomethingChanged = 1;

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<OLD>")]
        [Description("Folder of a knowledge base, or a git revision.")]
        public string Old { get; init; } = "";

        [CommandArgument(1, "<NEW>")]
        [Description("The same, of the base to compare with.")]
        public string New { get; init; } = "";

        [CommandOption("-k|--base <FOLDER>")]
        [Description("Where the knowledge base is inside the repository, for revisions.")]
        [DefaultValue("swap-kb")]
        public string Base { get; init; } = "swap-kb";

        [CommandOption("--as <FORM>")]
        [Description("text, markdown or json.")]
        [DefaultValue("text")]
        public string As { get; init; } = "text";

        [CommandOption("--to <FILE>")]
        [Description("Write the report there in place of the terminal.")]
        public string? To { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        CombinationArguments.Know(["text", "markdown", "json"], settings.As, "form of report");
        // Side by side: reading one has nothing to do with reading the other. Both are waited for, so that both clean up.
        var read = Task.WhenAll(new[] { settings.Old, settings.New }.Select(given => Task.Run(() => Read(given, settings.Base, cancellationToken), cancellationToken)))
            .GetAwaiter().GetResult();
        var ((before, oldName), (now, newName)) = (read[0], read[1]);
        if (!Examined(before, settings.Old) | !Examined(now, settings.New))
        {
            return Exit.CouldNotRun;
        }

        var impact = KnowledgeImpact.Between(before, now);
        var names = new ImpactNames(oldName, newName);
        switch (settings.As)
        {
            case "json":
                Terminal.Deliver(ImpactJson.Write(impact, names), settings.To);
                break;
            case "markdown":
                Terminal.Deliver(ImpactMarkdown.Write(impact, names), settings.To);
                break;
            default:
                Text(impact, names, settings.To);
                break;
        }

        return impact.Changed ? SomethingChanged : Exit.Sound;
    }

    private static void Text(KnowledgeImpact impact, ImpactNames names, string? file)
    {
        if (file is null)
        {
            new ImpactText(Terminal.Out, impact, names).Write();
            return;
        }

        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        new ImpactText(Terminal.Plain(text), impact, names).Write();
        Terminal.Deliver(text.ToString(), file);
    }

    private static (Proof Proof, BaseName Name) Read(string given, string inside, CancellationToken cancellation)
    {
        if (Directory.Exists(given))
        {
            return (Loading.Load(given, examine: true, cancellation), Named(given));
        }

        // What is not there and looks like a path was meant as one: git would only answer that it knows no such revision.
        if (given.StartsWith('.') || Path.IsPathRooted(given))
        {
            throw new ArgumentProblemException($"no folder `{given}`");
        }

        using var revision = RevisionFolder.Of(given, inside, cancellation);
        return (Loading.Load(revision.Folder, examine: true, cancellation), new BaseName(given, revision.Commit));
    }

    /// <summary>Reports are handed on: of a path of this machine only the last folder is anybody's business.</summary>
    private static BaseName Named(string folder) => new(Path.IsPathRooted(folder) ? new DirectoryInfo(folder).Name : folder);

    private static bool Examined(Proof proof, string given)
    {
        if (proof.Resolution is not null)
        {
            return true;
        }

        Terminal.Error.MarkupLine($"`{PlainText.Markup(given)}` has errors that keep its combinations from being known:");
        new CheckText(Terminal.Error, proof, given).Write();
        return false;
    }
}
