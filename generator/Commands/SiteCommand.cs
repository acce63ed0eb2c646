using System.ComponentModel;
using System.Globalization;
using Spectre.Console;
using Spectre.Console.Cli;
using Swapwright.Reports;
using Swapwright.Site;
using Swapwright.Site.Output;
using Swapwright.Site.Rendering;
using Swapwright.Site.Reuse;

namespace Swapwright.Commands;

/// <summary><c>swapwright site</c>: check, then render.</summary>
internal sealed class SiteCommand : Command<SiteCommand.Settings>
{
    internal sealed class Settings : KnowledgeSettings
    {
        [CommandOption("--to <FOLDER>")]
        [Description("Folder of the site: new, empty, or made by an earlier run.")]
        [DefaultValue("out/site")]
        public string To { get; init; } = "out/site";

        [CommandOption("--templates <FOLDER>")]
        [Description("Folder of templates to use in place of the built-in ones; site-template/ inside the base is laid over either.")]
        public string? Templates { get; init; }

        [CommandOption("--shard <K/N>")]
        [Description("Render the K-th of N disjoint parts only, each into a folder of its own. The parts laid over one another are the whole site.")]
        public string? Shard { get; init; }

        [CommandOption("--anew")]
        [Description("Make every page. Otherwise a page is kept from the earlier run where what it is made from has not changed.")]
        public bool Anew { get; init; }
    }

    // What a run that changes little makes, most of it to the end, for each byte that the run before noted of its works: it then ends without a collection.
    private const long MadeOfANote = 80;

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var shard = settings.Shard is not { } named ? null
            : Shard.Parse(named) ?? throw new ArgumentProblemException("`--shard` takes which part of how many, such as 1/4");
        var proof = Loading.Load(settings.Folder, examine: true, cancellationToken, shard is null && !settings.Anew ? MadeOfANote * SiteRecord.LengthOf(settings.To) : 0);
        if (proof.Resolution is null || proof.HasErrors)
        {
            new CheckText(Terminal.Error, proof, settings.Folder).Write();
            Terminal.Error.MarkupLine("The site was not rendered; an earlier one is left as it was.");
            return Exit.ErrorsFound;
        }

        try
        {
            var templates = (settings.Templates is { } folder ? Templates(folder) : Site.Rendering.Templates.Embedded()).Over(TemplateFolder.Of(settings.Folder));
            var (guides, pages, made) = Render(settings, proof, templates, shard, cancellationToken);
            var where = shard is null
                ? $"open {PlainText.Markup(Path.Combine(settings.To, "index.html"))}"
                : string.Create(CultureInfo.InvariantCulture, $"part {shard.Number} of {shard.Of} in {PlainText.Markup(settings.To)}, to be laid over the others");
            Terminal.Out.MarkupLine(string.Create(CultureInfo.InvariantCulture, $"{guides} {(guides == 1 ? "guide" : "guides")}, {pages} pages{(made < pages ? $", {made} of them made in this run" : "")}: {where}"));
            return Exit.Sound;
        }
        catch (TemplateException problem)
        {
            Terminal.Error.MarkupLine($"[red]swapwright:[/] {PlainText.Markup(problem.Message)}");
            Terminal.Error.MarkupLine("The site was not rendered; an earlier one is left as it was.");
            return Exit.ErrorsFound;
        }
        catch (SiteFolderException problem)
        {
            throw new ArgumentProblemException(problem.Message);
        }
    }

    private static Templates Templates(string folder) => Directory.Exists(folder)
        ? Site.Rendering.Templates.FromFolder(folder)
        : throw new ArgumentProblemException($"no folder `{folder}` of templates");

    /// <summary>The one line for a log: what was begun, for whoever reads it while the run goes on or after it was killed.</summary>
    private static void Begin(string to, Shard? shard, int done, int all)
    {
        if (done == 0)
        {
            var part = shard is null ? "" : string.Create(CultureInfo.InvariantCulture, $", part {shard.Number} of {shard.Of},");
            Terminal.Out.MarkupLine(string.Create(CultureInfo.InvariantCulture, $"Rendering {all} {(all == 1 ? "guide" : "guides")}{part} into {PlainText.Markup(to)}"));
        }
    }

    private static (int Guides, int Pages, int Made) Render(Settings settings, Findings.Proof proof, Templates templates, Shard? shard, CancellationToken cancellation)
    {
        if (!Terminal.Out.Profile.Out.IsTerminal)
        {
            return SiteBuilder.Render(proof, settings.To, templates, (done, all) => Begin(settings.To, shard, done, all), shard, settings.Anew, cancellation: cancellation);
        }

        (int, int, int) result = default;
        Terminal.Out.Progress().AutoClear(true).Start(progress =>
        {
            var bar = progress.AddTask("Rendering guides");
            result = SiteBuilder.Render(proof, settings.To, templates, (done, all) => bar.MaxValue(all).Value(done), shard, settings.Anew, cancellation: cancellation);
        });
        return result;
    }
}
