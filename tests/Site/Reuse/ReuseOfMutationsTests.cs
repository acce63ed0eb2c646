using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;
using Swapwright.Site.Reuse;
using Swapwright.Tests.Findings.Mutations;
using Swapwright.Tests.Hostile;

namespace Swapwright.Tests.Site.Reuse;

/// <summary>
/// Mistakes and changes of every class, made in the shipped base: a guide whose inputs are called the same has the same pages, and so has
/// every other page. Pages are rendered for a sample of the guides; <c>SWAPWRIGHT_REUSE=all</c> tries every class, a test run a few.
/// </summary>
public sealed class ReuseOfMutationsTests
{
    private const int Step = 40;

    [Fact]
    public void OfGuide_InputsThatAreTheSame_GiveTheSamePages()
    {
        var shipped = new ShippedBase();
        var before = Pages.Of(shipped.Proof);
        var times = LongRun.Times("SWAPWRIGHT_REUSE", 8, int.MaxValue);
        var drawn = MutationRun.Draw(shipped, 20261128, each: 1, open: 1, step: Math.Max(1, MutationRun.Classes.Length / times));
        var (tried, same, other) = (0, 0, 0);
        foreach (var (kind, mutation) in drawn)
        {
            var proof = Proof.Of(shipped.With(mutation));
            if (proof.Resolution is null || proof.HasErrors)
            {
                continue;
            }

            tried++;
            foreach (var (name, (inputs, make)) in Pages.Of(proof).Works)
            {
                if (!before.Works.TryGetValue(name, out var known) || known.Inputs != inputs)
                {
                    other++;
                    continue;
                }

                same++;
                Assert.True(known.Make() == make(), $"{name} is not the same after `{kind.Name}`: {mutation.What}");
            }
        }

        Assert.True(tried > 0 && same > 0 && other > 0, string.Create(CultureInfo.InvariantCulture, $"{tried} mutations were tried, {same} works kept, {other} made"));
    }

    /// <summary>The works of a base by their names: their inputs, and their pages as one text, made when asked for.</summary>
    private sealed record Pages(ImmutableDictionary<string, (Digest Inputs, Func<string> Make)> Works)
    {
        public static Pages Of(Proof proof)
        {
            var templates = Templates.Embedded();
            var plan = new SitePlan(proof, templates, SiteRecord.None);
            var works = plan.Guides.Where((_, at) => at % Step == 0).Concat(plan.Shared.Where((_, at) => at % (Step / 4) == 0));
            return new Pages(works.ToImmutableDictionary(
                work => work.Name,
                work =>
                {
                    var made = new Lazy<string>(() => string.Concat(work.Pages.Select(page => templates.Render(page.Build()))));
                    return (work.Inputs!.Value, (Func<string>)(() => made.Value));
                },
                StringComparer.Ordinal));
        }
    }
}
