using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Texts;

namespace Swapwright.Drafting;

/// <summary>What a new entity of each kind says to begin with: everything that its kind asks for, with a remark where a thought is wanted.</summary>
internal sealed class DraftForms(KnowledgeBase kb, DraftRequest request, string title)
{
    private const string ChangeThem = "These values are placeholders within their range: put what is so in their place.";

    /// <summary>Before this nothing had a plug or an injector that the checks could speak of; any one year does, for it can always be widened.</summary>
    private const int SomeYear = 1990;

    public DraftMapping Of(string kind) => kind switch
    {
        "chassis" => Variant("chassis", kb.Chassis.All, "accessories, devices, harness, ports, body and needs: what the worksheets compute with; see a finished variant"),
        "engine" => Variant("donor", kb.Donors.All, "belt-drives, devices, harness and ports: what the worksheets compute with; see a finished variant"),
        "gearbox" => Plain("How to tell it: tag, case, number of bolts.").If(request.Like is null, form => WithFacts(form, "gearbox").Remark("ratios, mass, oil: what gearing and load are computed from")),
        "ecu" => Plain("How to tell it: number on the case, number of plugs.").If(request.Like is null, form => WithFacts(form, "ecu").Remark("plugs: the whole pin-out, cavity by cavity; an empty one is `unused`")),
        "part" => Plain("What it is, and what to ask for at the counter.").If(request.Like is null, form => WithFacts(form
            .Add("category", "others", "heading of the shopping list")
            .Add("price", "{least: 10, likely: 20, most: 40}", "in the base's currency")
            .Add("from", "parts-shop", "breaker, dealer, parts-shop, wire-shop, machine-shop, hose-shop, workshop, office or make"), "part")),
        "connector" => Connector(),
        "choice" => Choice(),
        "rule" => Rule(),
        "task" => Task(),
        "article" => Article(),
        "page" => Title()
            .Add("summary", ToWrite("What this page is for, in one sentence."))
            .Add("linked", "footer", "footer or navigation")
            .Add("order", "10", "place among the links; lower comes first"),
        "position" => Title()
            .Add("system", DraftScalar.Of(request.System ?? ""), "heading it is listed under")
            .Add("about", ToWrite("What it is, and how to tell which one you have."))
            .Remark("applies: a condition, where the position is not on every vehicle; safety: fuel, brakes, lifting, …")
            .Remark("Every position needs an answer in every combination: write its general rule next."),
        "source" => Title()
            .Add("kind", "reader-report", "measurement, build-log, manual, standard, reader-report or common-practice")
            .Add("date", kb.Settings.AsOf, "the day it was made or said")
            .Add("by", "unnamed", "a person, a group, a publisher")
            .Add("about", ToWrite("What was measured or said, on how many vehicles.")),
        "term" => new DraftMapping()
            .Add("term", DraftScalar.Of(title.ToLowerInvariant()))
            .Add("short", ToWrite("What it means, in one sentence."), "shown where a reader points at the word"),
        _ => throw new DraftProblemException($"nothing is drafted for `{kind}`"),
    };

    private static string ToWrite(string wanted) => DraftScalar.Of(Unwritten.Text(wanted));

    private DraftMapping Title() => new DraftMapping().Add("title", DraftScalar.Of(title));

    private DraftMapping Plain(string about)
    {
        var form = Title();
        return request.Like is { } like
            ? form.Add("like", DraftScalar.Of(like), "everything is taken from there that is not said here").Add("about", ToWrite(about)).Remark("Say only what differs; `key: null` takes something out.")
            : form.Add("about", ToWrite(about));
    }

    private DraftMapping Variant<T>(string subject, IEnumerable<T> others, string more)
        where T : Variant
    {
        var like = others.FirstOrDefault(variant => variant.Id == request.Like);
        var year = (like?.Years.To ?? others.Select(variant => (int?)variant.Years.From).Min() ?? SomeYear).ToString(CultureInfo.InvariantCulture);
        var years = new DraftMapping().Add("from", year).Add("to", year, "both included; one set of facts in all of them");
        var form = Title();
        if (like is not null)
        {
            return form.Add("like", DraftScalar.Of(like.Id), "everything is taken from there that is not said here")
                .Add("years", years)
                .Add("about", ToWrite("How to tell it from the one it is like."))
                .Remark("Say only what differs, as in `facts: {…}`; `key: null` takes something out.");
        }

        form.Add("maker", "Unnamed", "who made it")
            .Add("family", DraftScalar.Of(request.Id.Split('-')[0]), "conditions may test it, lists group by it")
            .Add("years", years)
            .Add("about", ToWrite("How to tell that this is the variant, standing in front of it."));
        return WithFacts(form, subject).Remark(more);
    }

    private DraftMapping WithFacts(DraftMapping form, string subject) => DraftFacts.Any(kb, subject)
        ? form.Remark(ChangeThem).Add("facts", DraftFacts.Of(kb, subject, request.Ask))
        : form;

    private DraftMapping Connector() => Title()
        .Add("about", ToWrite("How to tell it: number of cavities, shape, latch, colour, where it is found. Say from which side its face is drawn."))
        .Add("rows", "[[1, 2]]", "the cavities as they lie on the face, row by row")
        .Add("terminal", "blade-2-8", "kind and width of the metal inside")
        .Add("sealed", "false")
        .Add("wire", "{from: 0.5, to: 1.5}", "mm² that its terminals take")
        .Add("max-current", "10", "A in one cavity")
        .Add("price", "{least: 2, likely: 4, most: 8}")
        .Remark("mates: other families that go into it");

    private DraftMapping Choice() => Title()
        .Add("question", DraftScalar.Of($"{title}: which one?"), "what the builder is asked")
        .Add("order", "100", "place among the choices; lower comes first")
        .Remark("applies: a condition, where the question does not always arise")
        .Add("options", new DraftMapping()
            .Add("first", new DraftMapping().Add("title", DraftScalar.Of("The one way")).Add("about", ToWrite("What speaks for it.")))
            .Add("second", new DraftMapping().Add("title", DraftScalar.Of("The other way")).Add("about", ToWrite("What speaks for it."))))
        .Remark($"The first is the default. Rules ask for it as `choice.{request.Id}: second`.")
        .Remark("recommend: which option, when, and why");

    private DraftMapping Rule()
    {
        var position = kb.PositionOrder.FirstOrDefault(one => one.System == request.System) ?? kb.PositionOrder.FirstOrDefault()
            ?? throw new DraftProblemException("positions.yaml has no position yet that a rule could answer: `swapwright draft position ID` writes an entry");
        var others = kb.Rules.All.Where(rule => rule.Answers.Any(answer => answer.Position == position.Id)).Select(rule => rule.Id).ToList();
        var form = Title();
        if (kb.Donors.All.FirstOrDefault() is { } donor)
        {
            form.Remark("Where it holds. Ask for facts where you can: a rule that lists variants has to be touched for every new one.")
                .Add("when", new DraftMapping().Add("donor.variant", DraftScalar.Of(donor.Id)));
        }

        form.Add("then", new DraftMapping().Add("answers", new DraftMapping()
            .Add(position.Id, "{source: chassis, treatment: as-is}", "source: chassis, donor, other, new, made, none; treatment: as-is, refresh, modify, move, blank")));
        if (others.Count > 0)
        {
            form.Add("overrides", $"[{string.Join(", ", others)}]", "they answer here too: keep those to which this is the exception");
        }

        return Word(form.Add("because", ToWrite("Why it is so, for somebody who doubts it.")));
    }

    /// <summary>On whose word and how sure; a base without sources has nothing to name.</summary>
    private DraftMapping Word(DraftMapping form)
    {
        if (kb.Sources.Ids.FirstOrDefault() is { } source)
        {
            form.Add("sources", $"[{source}]", "on whose word: ids of sources.yaml");
        }

        return form.Add("standing", "reported", "reported, measured, or built (somebody drove it)")
            .Add("checked", kb.Settings.AsOf, "the day somebody last went through it");
    }

    private DraftMapping Task() => Title()
        .Add("phase", "prepare", string.Join(", ", WorkTask.Phases))
        .Remark("when: {} for always, or a condition; without it the task appears where a rule names it under `tasks`")
        .Add("hours", "{least: 0.5, likely: 1, most: 2}")
        .Add("skill", "careful", "plain, careful, practised or specialist")
        .Add("people", "1")
        .Add("steps", $"[{ToWrite("Say the first step.")}, {ToWrite("Say the second.")}]")
        .Remark("after: tasks that come first; needs: positions whose parts it takes; tools, cautions, mistakes");

    private DraftMapping Article()
    {
        var form = Title()
            .Add("summary", ToWrite("What a reader can do afterwards, in one sentence."))
            .Add("topic", "Others", "articles of one topic stand together");
        if (kb.PositionOrder.FirstOrDefault() is { } position)
        {
            form.Add("positions", $"[{position.Id}]", "positions it helps with");
        }

        return Word(form);
    }
}
