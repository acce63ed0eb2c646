using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>
/// A rule without which every reader would be told the same. Taking it out must take no answer, value, task or exclusion
/// away, and must not let a rule that it overrides speak up with anything new.
/// </summary>
public static class RedundantRule
{
    public static readonly SpaceCheck Check = new(FindingKinds.RedundantRule, Run) { Aside = true };

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var search = new Search(examination.Resolution, examination.Effects);
        foreach (var rule in examination.Base.Rules.All.Where(search.ChangesNothing))
        {
            var twins = search.Twins(rule).ToList();
            yield return new Finding(FindingKinds.RedundantRule, $"without `{rule.Id}` every reader would be told the same", rule.Place)
            {
                Related = [.. twins.Take(4).Select(twin => new RelatedPlace($"`{twin.Id}` says the same", twin.Place))],
                Mend = twins.Count == 0
                    ? "Take the rule out, or correct its `when`: where it applies it settles nothing."
                    : $"Keep one of `{rule.Id}` and {string.Join(", ", twins.Take(4).Select(twin => $"`{twin.Id}`"))}, with the sources of both.",
            };
        }
    }

    private sealed class Search(Resolution resolution, RuleEffects effects)
    {
        private readonly RegionStore _store = resolution.Store;
        private readonly Dictionary<string, ILookup<string, StandingAnswer>> _alike = new(StringComparer.Ordinal);
        private readonly bool _choicesAsk = resolution.Space.Base.Choices.All.Any(choice => choice.Applies.AnswerTests().Any());
        private readonly ImmutableHashSet<string> _asked = [.. Conditions(resolution.Space.Base).SelectMany(condition => condition.AnswerTests()).Select(test => test.Position)];

        public bool ChangesNothing(Rule rule) =>
            !rule.Answers.Where(Known).Any(answer => StandsAlone(rule, answer) || Matters(answer.Position, GoneWith(rule, answer)))
            && !resolution.ValuesOf(rule).Any(value => Read(value.Region))
            && SpeechStays(rule)
            && rule.Answers.Where(Known).All(answer => AnswersStay(rule, answer))
            && ExclusionsStay(rule)
            && Overridden(rule).All(other => StaysSilent(rule, other))
            && !effects.IsDead(rule) && !effects.IsShadowed(rule);

        /// <summary>The rules that give what a rule gives, somewhere where it does.</summary>
        public IEnumerable<Rule> Twins(Rule rule)
        {
            var answering = rule.Answers.Where(Known).SelectMany(answer => Alike(answer.Position, Content(answer))
                .Where(one => one.Rule.Id != rule.Id && Read(_store.And(one.Region, effects.Standing(rule, answer.Position))))
                .Select(one => one.Rule));
            var excluding = resolution.Exclusions.Where(one => one.Rule.Id != rule.Id && resolution.DomainParts.Intersects(_store.And(one.Region, effects.Exclusion(rule)))).Select(one => one.Rule);
            return answering.Concat(excluding).DistinctBy(other => other.Id);
        }

        /// <summary>
        /// Whether a buildable combination is told an answer by this rule, and no other rule with the same answer applies there,
        /// overridden or not: then the answer goes with the rule. Nearly every rule is known to be needed by this alone.
        /// </summary>
        private bool StandsAlone(Rule rule, Answer answer)
        {
            var others = Alike(answer.Position, Content(answer)).Where(one => one.Rule.Id != rule.Id).Select(one => one.Rule).ToList();
            return effects.Stands(rule, answer.Position) && (others.Count == 0 || effects.StandsBeside(rule, answer.Position, others));
        }

        /// <summary>The answers at a position that tell a reader the same.</summary>
        private IEnumerable<StandingAnswer> Alike(string position, string content)
        {
            if (!_alike.TryGetValue(position, out var alike))
            {
                alike = resolution.At(position).ToLookup(one => Content(one.Answer), StringComparer.Ordinal);
                _alike.Add(position, alike);
            }

            return alike[content];
        }

        private bool AnswersStay(Rule rule, Answer answer)
        {
            var overridden = Overridden(rule).Where(other => other.AnswerAt(answer.Position) is not null).ToList();
            foreach (var content in overridden.Select(other => Content(other.AnswerAt(answer.Position)!)).Prepend(Content(answer)).Distinct(StringComparer.Ordinal))
            {
                var same = Alike(answer.Position, content).ToList();
                var others = same.Where(one => one.Rule.Id != rule.Id).ToList();
                var before = _store.OrAll(same.Select(one => one.Region));
                var after = _store.OrAll(others.Select(one => overridden.Any(other => other.Id == one.Rule.Id) ? _store.Or(one.Region, SpeaksUp(rule, one.Rule, answer.Position)) : one.Region));
                if (Matters(answer.Position, _store.Or(_store.Minus(before, after), _store.Minus(after, before))))
                {
                    return false;
                }
            }

            return true;
        }

        /// <summary>
        /// Where the answer stands now and no rule would give the same without this one. It is worked out
        /// within the rule's own region, which is small.
        /// </summary>
        private Region GoneWith(Rule rule, Answer answer)
        {
            var position = answer.Position;
            var gone = Without(_store.And(resolution.When(rule), resolution.Applies(position)), rule, rule, position);
            foreach (var other in Alike(position, Content(answer)))
            {
                if (other.Rule.Id != rule.Id && !gone.IsNone)
                {
                    gone = _store.Minus(gone, Without(_store.And(gone, resolution.When(other.Rule)), other.Rule, rule, position));
                }
            }

            return gone;
        }

        /// <summary>What the rules that override a rule at a position, all but one of them, leave of a region.</summary>
        private Region Without(Region region, Rule overridden, Rule but, string position)
        {
            foreach (var over in resolution.Overriders.GetValueOrDefault(overridden.Id, []))
            {
                if (region.IsNone)
                {
                    break;
                }

                region = over.Id == but.Id || over.AnswerAt(position) is null ? region : _store.Minus(region, resolution.When(over));
            }

            return region;
        }

        // An answer that some condition asks for decides more than what is read: combinations that cannot be built count too and,
        // where answers decide whether a choice applies, such as are no combinations yet.
        private bool Matters(string position, Region changed) =>
            !_asked.Contains(position) ? Read(changed)
            : _choicesAsk ? !changed.IsNone
            : resolution.DomainParts.Intersects(changed);

        /// <summary>
        /// Whether other rules that answer say every task, caution, mistake and piece of advice of this one wherever it says them. What a rule
        /// without an answer says is its own: nobody writes it but to have it said.
        /// </summary>
        private bool SpeechStays(Rule rule)
        {
            if (!RuleEffects.HasSpeech(rule))
            {
                return true;
            }

            var left = resolution.Speaks(rule);
            foreach (var other in rule.Answers.IsEmpty ? [] : resolution.Space.Base.Rules.All.Where(other => other.Id != rule.Id && !other.Answers.IsEmpty && SaysAllOf(other, rule)))
            {
                left = _store.Intersects(left, resolution.When(other)) ? _store.Minus(left, resolution.Speaks(other)) : left;
            }

            return !Read(left);
        }

        private static bool SaysAllOf(Rule other, Rule rule) =>
            rule.Tasks.All(other.Tasks.Contains)
            && rule.Cautions.All(caution => other.Cautions.Any(one => one.About == caution.About && one.Text == caution.Text))
            && rule.Mistakes.All(other.Mistakes.Contains)
            && rule.Advises.All(advice => other.Advises.Any(one => one.Text == advice.Text && one.Donor == advice.Donor));

        private bool ExclusionsStay(Rule rule)
        {
            var own = effects.Exclusion(rule);
            var lifted = Overridden(rule).Select(other => (Rule: other, Region: SpeaksUp(rule, other, effects.Unlifted(other), _ => true))).Where(one => !one.Region.IsNone).ToList();
            if (own.IsNone && lifted.Count == 0)
            {
                return true;
            }

            var returning = _store.OrAll(lifted.Select(one => one.Region));
            return !AloneIn(own, returning) && !AloneIn(returning, own);

            // Whether a region holds a combination that no other rule excludes and that is not in the other region.
            bool AloneIn(Region region, Region other) => resolution.DomainParts.Intersects(
                [region], resolution.Exclusions.Where(one => one.Rule.Id != rule.Id && _store.Intersects(one.Region, region)).Select(one => one.Region).Append(other));
        }

        private bool StaysSilent(Rule rule, Rule other)
        {
            foreach (var name in other.Values.Select(value => value.Name).Where(name => rule.Values.Any(own => own.Name == name)))
            {
                if (Read(SpeaksUp(rule, other, resolution.When(other), over => over.Values.Any(value => value.Name == name))))
                {
                    return false;
                }
            }

            if (!RuleEffects.HasSpeech(other))
            {
                return true;
            }

            var louder = other.Answers.IsEmpty && other.Values.IsEmpty
                ? SpeaksUp(rule, other, resolution.When(other), _ => true)
                : _store.OrAll(other.Answers.Where(answer => Known(answer) && rule.AnswerAt(answer.Position) is not null).Select(answer => SpeaksUp(rule, other, answer.Position)));
            return !Read(_store.Minus(louder, resolution.Speaks(other)));
        }

        private Region SpeaksUp(Rule rule, Rule other, string position) =>
            SpeaksUp(rule, other, _store.And(resolution.When(other), resolution.Applies(position)), over => over.AnswerAt(position) is not null);

        /// <summary>Where an overridden rule is silent for this rule alone.</summary>
        private Region SpeaksUp(Rule rule, Rule other, Region all, Func<Rule, bool> silences) => _store.Minus(
            _store.And(all, resolution.When(rule)),
            _store.OrAll(resolution.Overriders[other.Id].Where(over => over.Id != rule.Id && silences(over)).Select(resolution.When)));

        private IEnumerable<Rule> Overridden(Rule rule) => rule.Overrides.Select(named => resolution.Space.Base.Rules.Find(named.Id)).OfType<Rule>();

        private bool Known(Answer answer) => resolution.Space.Base.Positions.Has(answer.Position);

        private bool Read(Region region) => resolution.BuildableParts.Intersects(region);

        private static string Content(Answer answer) => string.Join('\u001f',
        [
            answer.Source, answer.Treatment, answer.Part ?? "", string.Join('\u001e', answer.Also.Order(StringComparer.Ordinal)),
            string.Join('\u001e', answer.Steps.AsEnumerable()), answer.Notes, string.Join('\u001e', answer.Mistakes.AsEnumerable()), answer.Article ?? "",
        ]);

        private static IEnumerable<Condition> Conditions(KnowledgeBase kb) =>
            kb.Rules.All.SelectMany(rule => new[] { rule.When, rule.Requires })
                .Concat(kb.Positions.All.Select(position => position.Applies))
                .Concat(kb.Choices.All.SelectMany(choice => choice.Recommendations.Select(one => one.When).Prepend(choice.Applies)))
                .Concat(kb.Tasks.All.Select(task => task.When))
                .Concat(kb.Tasks.All.SelectMany(task => task.Tools).Select(tool => tool.When))
                .Concat(kb.Tasks.All.SelectMany(task => task.Fasteners).Concat(kb.Parts.All.SelectMany(part => part.Fasteners)).Select(fastener => fastener.When))
                .OfType<Condition>();
    }
}
