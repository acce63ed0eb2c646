using Spectre.Console;
using Spectre.Console.Cli;
using Swapwright.Knowledge;
using Swapwright.Reports;

namespace Swapwright.Commands;

/// <summary><c>swapwright register</c>: adds the ids of new entities to register.yaml; takes nothing out.</summary>
internal sealed class RegisterCommand : Command<KnowledgeSettings>
{
    public override int Execute(CommandContext context, KnowledgeSettings settings, CancellationToken cancellationToken)
    {
        var proof = Loading.Load(settings.Folder, examine: false, cancellationToken);
        var path = Path.Combine(settings.Folder, RegisterText.File);
        var before = File.Exists(path) ? File.ReadAllText(path) : null;
        if (before is not null && proof.Tree.Find(RegisterText.File) is not { Root: not null })
        {
            new CheckText(Terminal.Error, proof, settings.Folder).Write();
            return Exit.ErrorsFound;
        }

        var (text, added) = RegisterText.With(before, proof.Base);
        if (added.Count > 0)
        {
            Terminal.Deliver(text, path);
        }

        Terminal.Out.MarkupLine(added.Count == 0 ? "Nothing to add." : $"Added: {PlainText.Markup(string.Join(", ", added))}");
        return Exit.Sound;
    }
}
