using System.Collections.Immutable;
using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Texts;
using Swapwright.Source;

namespace Swapwright.Drafting;

/// <summary>A request → a text that is valid at once, held against the base before it is written.</summary>
public static class Draft
{
    private static readonly ImmutableArray<string> s_kindsOfForm = ["schema", "reference", "vocabulary", "unit"];

    /// <exception cref="DraftProblemException">The request names nothing known, or something that is there already.</exception>
    public static DraftedText Of(KnowledgeBase kb, DraftRequest request)
    {
        Judge(kb, request);
        var title = request.Title ?? request.Ask?.Invoke("Title", Words(request.Id)) ?? Words(request.Id);
        if (title.Length == 0 || title.Any(char.IsControl) || request.Sets.Any(set => set.Value.Any(char.IsControl)))
        {
            throw new DraftProblemException("a title or a value is one line of text");
        }

        if (request.Kind == KnowledgeLayout.PictureKind)
        {
            return request.Sets.Length > 0
                ? throw new DraftProblemException("a picture has no keys to set")
                : new DraftedText(DraftKinds.PathOf(request.Kind, request.Id, null), Picture(title), null);
        }

        var form = new DraftForms(kb, request, title).Of(request.Kind);
        foreach (var (path, value) in request.Sets)
        {
            form.Set(path.Split('.'), DraftScalar.Typed(value));
        }

        if (DraftKinds.Entries.TryGetValue(request.Kind, out var entry))
        {
            return new DraftedText(entry.File, new DraftMapping().Add(request.Id, form).Write(1), entry.Key);
        }

        var place = DraftKinds.PathOf(request.Kind, request.Id, request.Kind == "rule" ? request.System : null);
        return new DraftedText(place, request.Kind is KnowledgeLayout.ArticleKind or KnowledgeLayout.PageKind ? $"---\n{form.Write()}---\n{Body}" : Head(request.Kind, place) + form.Write(), null);
    }

    /// <summary>What a file of its own would be found to get wrong in its form, its references and its words.</summary>
    public static ImmutableArray<Finding> Faults(SourceTree tree, DraftRequest request, DraftedText drafted)
    {
        var (file, findings) = SourceReader.ReadFile(drafted.Path, request.Kind, request.Id, Encoding.UTF8.GetBytes(drafted.Text), SourceLimits.Default);
        var together = tree with { Files = [.. tree.Files.Append(file).OrderBy(one => one.Path, StringComparer.Ordinal)] };
        return
        [
            .. findings,
            .. Proof.Of(together, examine: false).Findings.Where(finding => finding.Severity == Severity.Error && finding.Place.File == drafted.Path && s_kindsOfForm.Contains(finding.Id)),
        ];
    }

    private const string Body = $"""
        ## What to do first

        {Unwritten.Mark} Write it for somebody under the bonnet: short sentences, in the order in which the hands move. Headings begin with `##`.

        """;

    private static string Head(string kind, string path) =>
        $"# yaml-language-server: $schema={string.Concat(Enumerable.Repeat("../", path.Count(c => c == '/') + 1))}schema/{kind}.schema.json\n";

    private static string Picture(string title) => $"""
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 440 120">
          <!-- Colours by class only; swap-kb/pictures says which there are. An article shows it as ![words](picture:ID). -->
          <title>{System.Security.SecurityElement.Escape(title)}</title>
          <desc>{Unwritten.Mark} Say what there is to see, for those who do not see it.</desc>
          <path class="thick stroke-copper" d="M20 60 H420"/>
          <text x="220" y="48" text-anchor="middle" class="strong">{System.Security.SecurityElement.Escape(title)}</text>
        </svg>

        """;

    private static string Words(string id) => char.ToUpperInvariant(id[0]) + id[1..].Replace('-', ' ');

    private static void Judge(KnowledgeBase kb, DraftRequest request)
    {
        Know(DraftKinds.All, request.Kind, "kind");
        if (!KnowledgeLayout.IsId(request.Id))
        {
            throw new DraftProblemException($"`{request.Id}` is no id: use small letters a to z and digits, in words joined by single hyphens");
        }

        if (Present(kb, request.Kind).Contains(request.Id, StringComparer.Ordinal))
        {
            throw new DraftProblemException($"there is {(request.Kind[0] is 'a' or 'e' ? "an" : "a")} {request.Kind} `{request.Id}` already; nothing is overwritten");
        }

        if (request.Like is { } like)
        {
            if (!DraftKinds.WithLike.Contains(request.Kind))
            {
                throw new DraftProblemException($"a {request.Kind} cannot be like another; `--like` goes with {string.Join(", ", DraftKinds.WithLike)}");
            }

            Know(Present(kb, request.Kind), like, request.Kind);
        }

        if (request.Kind is "rule" or "position")
        {
            var systems = kb.Systems.Select(system => system.Id).ToList();
            Know(systems, request.System ?? throw new DraftProblemException($"say `--system SYSTEM`, one of: {string.Join(", ", systems)}"), "system");
        }
    }

    private static IEnumerable<string> Present(KnowledgeBase kb, string kind) => kind switch
    {
        "term" => kb.Terms.Ids,
        "source" => kb.Sources.Ids,
        KnowledgeLayout.PictureKind => kb.Pictures.Ids,
        _ => IdRegister.Present(kb, kind),
    };

    private static void Know(IEnumerable<string> known, string given, string what)
    {
        var names = known.ToList();
        if (!names.Contains(given, StringComparer.Ordinal))
        {
            throw new DraftProblemException(NearestName.Of(given, names) is { } near ? $"no {what} `{given}`; did you mean `{near}`?" : $"no {what} `{given}`; known: {string.Join(", ", names)}");
        }
    }
}
