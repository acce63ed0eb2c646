using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using Swapwright.Drafting;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Texts;
using Swapwright.Reports;

namespace Swapwright.Commands;

/// <summary><c>swapwright draft</c>: a new knowledge file, valid at once; or a new base.</summary>
internal sealed class DraftCommand : Command<DraftCommand.Settings>
{
    private const string NewBase = "base";

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<KIND>")]
        [Description("chassis, engine, gearbox, ecu, connector, part, choice, rule, task, article, picture, page, position, source or term; or `base` for a new base.")]
        public string Kind { get; init; } = "";

        [CommandArgument(1, "<ID>")]
        [Description("The new id, such as marn-16-95; for a base, the new folder.")]
        public string Id { get; init; } = "";

        [CommandArgument(2, "[swap-kb]")]
        [Description("Folder of the knowledge base.")]
        [DefaultValue("swap-kb")]
        public string Folder { get; init; } = "swap-kb";

        [CommandOption("--title <TEXT>")]
        [Description("What people call it.")]
        public string? Title { get; init; }

        [CommandOption("--system <SYSTEM>")]
        [Description("For a rule or a position: the system it belongs to.")]
        public string? System { get; init; }

        [CommandOption("--like <ID>")]
        [Description("Take everything from this one; the new file says only what differs.")]
        public string? Like { get; init; }

        [CommandOption("--set <KEY=VALUE>")]
        [Description("A value at a key, dots between keys: --set facts.power=96. May be given several times.")]
        public string[] Set { get; init; } = [];
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        try
        {
            return settings.Kind == NewBase ? Base(settings) : Entity(settings, cancellationToken);
        }
        catch (DraftProblemException problem)
        {
            throw new ArgumentProblemException(problem.Message);
        }
    }

    private static int Base(Settings settings)
    {
        if (settings.Like is not null || settings.System is not null || settings.Set.Length > 0)
        {
            throw new ArgumentProblemException("a new base takes a `--title` and nothing else");
        }

        var name = Path.GetFileName(Path.TrimEndingDirectorySeparator(settings.Id));
        BaseDraft.Write(settings.Id, settings.Title ?? Asked()?.Invoke("Title", name) ?? name);
        EditorSchemas.Write(Loading.Load(Path.Combine(settings.Id, "swap-kb"), examine: false, CancellationToken.None).Base, Path.Combine(settings.Id, "schema"));
        Terminal.Out.MarkupLine($"A new base in {PlainText.Markup(settings.Id)}: one car, one engine, two positions. Next: cd {PlainText.Markup(settings.Id)}, then swapwright check and swapwright preview.");
        return Exit.Sound;
    }

    private static int Entity(Settings settings, CancellationToken cancellation)
    {
        var proof = Loading.Load(settings.Folder, examine: false, cancellation);
        var request = Request(settings, proof.Base);
        var drafted = Draft.Of(proof.Base, request);
        if (drafted.Under is { } under)
        {
            Terminal.Deliver(drafted.Text, null);
            Terminal.Error.MarkupLine($"A {PlainText.Markup(request.Kind)} has no file of its own, and nothing was written: add these lines under `{under}` in {PlainText.Markup(Path.Combine(settings.Folder, drafted.Path))}.");
            return Exit.Sound;
        }

        var faults = Draft.Faults(proof.Tree, request, drafted);
        if (faults.Length > 0)
        {
            Terminal.Error.MarkupLine("Nothing was written, because it would not be valid:");
            foreach (var fault in faults)
            {
                Terminal.Error.MarkupLine(PlainText.Markup($"  {fault.Id}: {fault.Message}. {fault.Mend}"));
            }

            return Exit.ErrorsFound;
        }

        DraftFolder.Write(settings.Folder, drafted.Path, drafted.Text);
        var toWrite = drafted.Text.Contains(Unwritten.Mark, StringComparison.Ordinal) ? $"put your own in place of the sentences that begin with `{Unwritten.Mark}`, and look" : "look";
        Terminal.Out.MarkupLine(PlainText.Markup($"{Path.Combine(settings.Folder, drafted.Path)}: {toWrite} at what each remark (#) asks. Then run `swapwright check`, and `swapwright register` so that the id never goes in silence."));
        return Exit.Sound;
    }

    private static DraftRequest Request(Settings settings, KnowledgeBase kb)
    {
        var ask = Asked();
        var system = settings.System;
        if (system is null && ask is not null && settings.Kind is "rule" or "position" && kb.Systems.FirstOrDefault() is { } first)
        {
            system = ask($"System ({string.Join(", ", kb.Systems.Select(one => one.Id))})", first.Id);
        }

        return new DraftRequest(settings.Kind, settings.Id)
        {
            Title = settings.Title,
            System = system,
            Like = settings.Like,
            Sets = [.. settings.Set.Select(Pair)],
            Ask = ask,
        };
    }

    /// <summary>Asks on the terminal; null where input or output is none, so that a script never waits.</summary>
    private static Func<string, string, string>? Asked() => Console.IsInputRedirected || Console.IsOutputRedirected
        ? null
        : (question, otherwise) => Terminal.Out.Prompt(new TextPrompt<string>(PlainText.Markup(question)).DefaultValue(otherwise));

    private static KeyValuePair<string, string> Pair(string text)
    {
        var equals = text.IndexOf('=', StringComparison.Ordinal);
        return equals > 0 && !text[..equals].Split('.').Contains("")
            ? KeyValuePair.Create(text[..equals], text[(equals + 1)..])
            : throw new ArgumentProblemException($"`{text}` sets nothing: write `key=value`, as in `facts.power=96`");
    }
}
