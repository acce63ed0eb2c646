using Swapwright.Knowledge;
using Swapwright.Site.Pages;
using Swapwright.Site.Rendering;

namespace Swapwright.Site.Reuse;

/// <summary>
/// What a page is made from, as a digest: where it is the same as in an earlier run, the page is the same too and need not be made.
/// </summary>
/// <remarks>
/// Told apart are rules only, for that is what changes from day to day. Everything else (the program, the templates, every file that is no
/// rule, the order in which the space asks its questions) goes into every digest. A guide then hangs on the rules that may say something of
/// its chassis and donor together, and on those that exclude or require anything of either: the nearest ways out of a closed option
/// lead to other guides of the chassis or of the donor. Whether a rule meets a pair is read off its region; what other rules, whose
/// answers its condition asks for, do to this region happens within the pairs that these meet.
/// </remarks>
internal sealed class PageInputs
{
    private readonly SiteKnowledge _site;
    private readonly Dictionary<string, Digest> _rules;
    private readonly RulesByPair _all;
    private readonly RulesByPair _restricting;
    private readonly Digest _common;
    private readonly Digest _restrictions;
    private readonly ILookup<string, Rule> _answering;
    private readonly Dictionary<string, Digest> _guides;

    public PageInputs(SiteKnowledge site, Templates templates)
    {
        _site = site;
        var kb = site.Base;
        var files = site.Proof.Tree.Files.ToDictionary(file => file.Path, file => new DigestBuilder().Add(file.Path).Add(file.Text).Finish(), StringComparer.Ordinal);
        _rules = kb.Rules.All.ToDictionary(rule => rule.Id, rule => files[rule.Place.File], StringComparer.Ordinal);
        var ofRules = kb.Rules.All.Select(rule => rule.Place.File).ToHashSet(StringComparer.Ordinal);
        var common = new DigestBuilder().Add(ProgramDigest.Of());
        foreach (var file in templates.Files)
        {
            common.Add(file.Path).Add(file.Bytes.Span);
        }

        foreach (var file in site.Proof.Tree.Files.Where(file => !ofRules.Contains(file.Path)))
        {
            common.Add(files[file.Path]);
        }

        foreach (var variable in site.Store.Variables)
        {
            common.Add(variable.Name).Add(string.Join('\n', variable.Values));
        }

        _common = common.Finish();
        Everything = new DigestBuilder().Add(_common).AddAll([.. kb.Rules.All.Select(rule => _rules[rule.Id])]).Finish();

        // A restriction that asks for answers moves with every rule that may give them.
        var restricting = kb.Rules.All.Where(IsRestricting).ToList();
        IEnumerable<Rule> moving = restricting.Exists(rule => rule.When.AnswerTests().Any() || (rule.Requires?.AnswerTests().Any() ?? false)) ? kb.Rules.All : restricting;
        _all = RulesByPair.Of(site.Resolution, kb.Rules.All, rule => _rules[rule.Id]);
        _restricting = RulesByPair.Of(site.Resolution, moving, rule => _rules[rule.Id]);
        _restrictions = new DigestBuilder().Add(_common).AddAll([.. moving.Select(rule => _rules[rule.Id])]).Finish();
        _answering = kb.Rules.All.SelectMany(rule => rule.Answers.Select(answer => (answer.Position, rule))).ToLookup(pair => pair.Position, pair => pair.rule, StringComparer.Ordinal);
        _guides = site.Guides.ToDictionary(guide => guide.Path, GuideInputs, StringComparer.Ordinal);
    }

    /// <summary>For a page that may speak of any rule.</summary>
    public Digest Everything { get; }

    /// <summary>For a page that speaks of no rule.</summary>
    public Digest NoRule => _common;

    public Digest OfGuide(GuideEntry guide) => _guides[guide.Path];

    /// <summary>For a page that holds guides against each other, and says why others cannot be built.</summary>
    public Digest OfGuides(IEnumerable<GuideEntry> guides) => new DigestBuilder().Add(_restrictions).AddAll([.. guides.Select(OfGuide)]).Finish();

    /// <summary>For what is told of a position: the rules that answer it, and those that these ask about.</summary>
    public Digest OfPosition(Position position) => OfPositions([position.Id], position.Applies);

    /// <summary>For a rule's own page: what it is overridden by and where it stands.</summary>
    public Digest OfRule(Rule rule)
    {
        var kb = _site.Base;
        var related = rule.Overrides.Select(named => kb.Rules.Find(named.Id)).OfType<Rule>().Concat(_site.Resolution.Overriders.GetValueOrDefault(rule.Id, []));
        var digest = new DigestBuilder().Add(_rules[rule.Id]).Add(OfPositions([.. rule.Answers.Select(answer => answer.Position)], rule.When));
        foreach (var other in related)
        {
            digest.Add(_rules[other.Id]).Add(OfPositions([], other.When));
        }

        return digest.Finish();
    }

    private Digest OfPositions(IEnumerable<string> positions, Condition asking)
    {
        var met = new SortedSet<string>(StringComparer.Ordinal);
        var waiting = new Queue<string>(positions.Concat(Asked(asking)));
        var digest = new DigestBuilder().Add(_restrictions);
        while (waiting.TryDequeue(out var position))
        {
            if (!met.Add(position))
            {
                continue;
            }

            foreach (var rule in _answering[position])
            {
                digest.Add(_rules[rule.Id]);
                foreach (var next in Asked(rule.When))
                {
                    waiting.Enqueue(next);
                }
            }

            foreach (var next in _site.Base.Positions.Find(position) is { } found ? Asked(found.Applies) : [])
            {
                waiting.Enqueue(next);
            }
        }

        return digest.Finish();
    }

    private static IEnumerable<string> Asked(Condition condition) => condition.AnswerTests().Select(test => test.Position);

    private static bool IsRestricting(Rule rule) => rule.Excludes || rule.Requires is not null;

    private Digest GuideInputs(GuideEntry guide)
    {
        var (chassis, donor) = At(guide);
        var digest = new DigestBuilder().Add(_common).Add(guide.Path).Add(_all.OfPair(chassis, donor)).Add(_restricting.OfChassis(chassis)).Add(_restricting.OfDonor(donor));
        foreach (var value in guide.Recommended)
        {
            digest.Add(value);
        }

        return digest.Finish();
    }

    private (int Chassis, int Donor) At(GuideEntry guide)
    {
        var space = _site.Resolution.Space;
        return (guide.Recommended[space.Chassis], guide.Recommended[space.Donor]);
    }
}
