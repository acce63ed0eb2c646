using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Ids and words that nobody knows, and quantities that cannot be.</summary>
internal static class ReferenceMutations
{
    private const string Unknown = "reference vocabulary";
    private const string Conditions = "(?:.*/)?(?:when|applies|require)/.*";

    public static IEnumerable<MutationClass> Classes =>
    [
        Values("mistype a part", "rule", "then/answers/*/(?:part|also)"),
        Values("mistype a rule", "rule", "overrides"),
        Values("mistype a source", "rule article", "sources"),
        Keys("mistype a position", "rule", "then/answers/*"),
        Values("mistype a position elsewhere", "engine task article", "belt-drives/*/stations/position|needs|positions"),
        Values("mistype a connector", "chassis engine ecu part connector", ".*/connector|mates"),
        Values("mistype a signal", "chassis engine ecu part", ".*/pins/*(?:/signal)?"),
        Keys("mistype a device role", "chassis engine part", "devices/*"),
        Values("mistype a task", "rule task article", "then/tasks|after|tasks"),
        Values("mistype a chassis, engine, gearbox or control unit", "chassis engine gearbox ecu part choice", "like|facts/(?:gearbox|origin-gearbox|ecu)|harness/ecu|options/*/binds/*"),
        Values("mistype an option", "choice rule", "recommend/option|(?:.*/)?choice\\.[^/]+"),
        Values("mistype an adjuster's station", "engine", "belt-drives/*/adjuster/station"),
        Keys("mistype a fact in a condition", "rule choice positions task", Conditions + "\\.[^/]+"),
        Values("mistype a value in a condition", "rule choice positions task", Conditions + "\\.[^/]+"),
        Keys("mistype a fact of an entity", "chassis engine gearbox ecu part", "facts/*"),
        MutationClass.Of("mistype a value of an entity", Duty.Always, Unknown, (shipped, _) => Spot.In(shipped, "chassis engine gearbox ecu part", "facts/*").Where(spot => Fact(shipped, spot)?.Type == FactType.OneOf).SelectMany(spot => Typed(shipped, spot))),
        MutationClass.Of("write a quantity of another dimension", Duty.Always, "unit", (shipped, _) => Quantities(shipped).Select(one => one.Spot.Mistake("wrong dimension", one.Spot.Replaced($"{one.Spot.Word} {(one.Fact.Unit.Dimension == Unit.Find("kg")!.Dimension ? "mm" : "kg")}")))),
        MutationClass.Of("write a quantity beyond its range", Duty.Always, "unit", (shipped, _) => Quantities(shipped).Where(one => one.Fact.Max is not null).Select(one => one.Spot.Mistake("out of range", one.Spot.Replaced(((one.Fact.Max!.Value * 10) + 1).ToString(CultureInfo.InvariantCulture))))),
    ];

    private static MutationClass Values(string name, string kinds, string pattern) => MutationClass.Of(name, Duty.Always, Unknown, (shipped, _) => Mistyping.Values(shipped, kinds, pattern));

    private static MutationClass Keys(string name, string kinds, string pattern) => MutationClass.Of(name, Duty.Always, Unknown, (shipped, _) => Mistyping.Keys(shipped, kinds, pattern));

    private static IEnumerable<Mutation> Typed(ShippedBase shipped, Spot spot) =>
        Mistyping.Of(shipped, spot.Word!) is { } typed ? [spot.Mistake($"`{spot.Word}` typed `{typed}`", spot.Replaced(typed))] : [];

    private static FactDeclaration? Fact(ShippedBase shipped, Spot spot) =>
        shipped.Proof.Base.Vocabulary.Fact(spot.File.Kind == "engine" ? "donor" : spot.File.Kind, spot.Entry!.Key.Text);

    private static IEnumerable<(Spot Spot, FactDeclaration Fact)> Quantities(ShippedBase shipped) =>
        from spot in Spot.In(shipped, "chassis engine gearbox ecu part", "facts/*")
        where spot.Node is ScalarNode { Kind: ScalarKind.Integer or ScalarKind.Number }
        let fact = Fact(shipped, spot)
        where fact is { Type: FactType.Number }
        select (spot, fact);
}
