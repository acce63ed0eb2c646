using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Site.Reuse;

/// <summary>Which rules may say something of a chassis and a donor together, as one digest a pair.</summary>
internal sealed class RulesByPair
{
    private readonly Digest[] _pairs;
    private readonly Digest[] _chassis;
    private readonly Digest[] _donors;

    private RulesByPair(Digest[] pairs, Digest[] chassis, Digest[] donors) => (_pairs, _chassis, _donors) = (pairs, chassis, donors);

    public Digest OfPair(int chassis, int donor) => _pairs[(chassis * _donors.Length) + donor];

    /// <summary>The rules that meet the chassis with any donor.</summary>
    public Digest OfChassis(int chassis) => _chassis[chassis];

    /// <summary>The rules that meet the donor in any chassis.</summary>
    public Digest OfDonor(int donor) => _donors[donor];

    /// <param name="digestOf">Of a rule's text.</param>
    public static RulesByPair Of(Resolution resolution, IEnumerable<Rule> rules, Func<Rule, Digest> digestOf)
    {
        var (store, space) = (resolution.Store, resolution.Space);
        var (chassis, donors) = (store.Variables[space.Chassis].Size, store.Variables[space.Donor].Size);
        int[] removed = [.. Enumerable.Range(0, store.Variables.Length).Where(level => level != space.Chassis && level != space.Donor)];

        // Many rules speak of the same pairs, however they differ otherwise: each set of pairs is gone through once.
        var groups = rules.GroupBy(rule => store.Project(resolution.When(rule), removed))
            .Select(group => (group.Key, Rules: new DigestBuilder().AddAll([.. group.OrderBy(rule => rule.Id, StringComparer.Ordinal).Select(digestOf)]).Finish()))
            .OrderBy(group => (group.Rules.High, group.Rules.Low)).ToList();
        var ofPair = new List<Digest>?[chassis * donors];
        var ofChassis = new List<Digest>?[chassis];
        var ofDonor = new List<Digest>?[donors];
        foreach (var (pairs, digest) in groups)
        {
            var met = new bool[donors];
            foreach (var c in store.AllowedValues(pairs, space.Chassis))
            {
                Add(ref ofChassis[c], digest);
                foreach (var d in store.AllowedValues(store.Restrict(pairs, space.Chassis, c), space.Donor))
                {
                    Add(ref ofPair[(c * donors) + d], digest);
                    met[d] = true;
                }
            }

            for (var d = 0; d < donors; d++)
            {
                if (met[d])
                {
                    Add(ref ofDonor[d], digest);
                }
            }
        }

        var builder = new DigestBuilder();
        Digest[] Sums(List<Digest>?[] lists) => Array.ConvertAll(lists, list => builder.AddAll(list ?? []).Finish());
        return new RulesByPair(Sums(ofPair), Sums(ofChassis), Sums(ofDonor));
    }

    private static void Add(ref List<Digest>? list, Digest digest) => (list ??= []).Add(digest);
}
