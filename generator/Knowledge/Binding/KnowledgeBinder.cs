using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge.Pictures;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>Source tree → knowledge base. Always gives a base, as complete as the files allow, and everything that is wrong.</summary>
public static class KnowledgeBinder
{
    private const int RulesAtOnce = 256;

    private static readonly ImmutableArray<string> s_likeKinds = ["chassis", "engine", "gearbox", "ecu", "part"];
    private static readonly ImmutableArray<string> s_referableKinds = ["gearbox", "ecu", "part", "connector"];

    public static (KnowledgeBase Base, ImmutableArray<Finding> Findings) Bind(SourceTree tree)
    {
        var context = new BindingContext();
        var files = tree.Files.Where(file => file.Root is not null).ToLookup(file => file.Kind, StringComparer.Ordinal);
        var resolved = new Dictionary<SourceFile, NodeReader>();
        var inheritance = new Inheritance(context);
        foreach (var group in files)
        {
            var roots = s_likeKinds.Contains(group.Key) ? inheritance.Resolve(group.Key, [.. group]) : null;
            foreach (var file in group)
            {
                resolved[file] = new NodeReader(context, roots?[file.Id] ?? file.Root);
            }
        }

        NodeReader Root(string kind) => files[kind].Select(file => resolved[file]).FirstOrDefault(new NodeReader(context, null));
        IEnumerable<(SourceFile File, NodeReader Reader)> Entities(string kind) => files[kind].OrderBy(file => file.Id, StringComparer.Ordinal).DistinctBy(file => file.Id).Select(file => (file, resolved[file]));

        var vocabulary = VocabularyBinder.Bind(Root("vocabulary"));
        var ids = s_referableKinds.ToDictionary(kind => kind, kind => (IReadOnlyCollection<string>)files[kind].Select(file => file.Id).ToHashSet(StringComparer.Ordinal), StringComparer.Ordinal);
        var facts = new FactBinder(context, vocabulary, kind => ids.GetValueOrDefault(kind, []));
        var electrical = new ElectricalBinder(context, vocabulary);
        var variants = new VariantBinder(context, vocabulary, facts, electrical);

        var chassis = Entities("chassis").Select(entity => variants.Chassis(entity.File, entity.Reader)).ToList();
        var donors = Entities("engine").Select(entity => variants.Donor(entity.File, entity.Reader)).ToList();
        var positionNodes = Root("positions").Members("positions").ToList();
        var names = Names(vocabulary, Entities("choice"), chassis, donors, [.. positionNodes.Select(member => member.Key.Text)], ids["part"]);
        ConditionBinder Conditions(BindingContext own) => new(own, vocabulary, new FactBinder(own, vocabulary, kind => ids.GetValueOrDefault(kind, [])), names);
        var conditions = Conditions(context);
        var rules = new RuleBinder(conditions);
        var positions = positionNodes.Select(member => rules.Position(member.Key, member.Value)).ToList();
        var systems = Root("positions").Members("systems").Select(member => new VehicleSystem(member.Key.Text, member.Value.Text("title", member.Key.Text), member.Value.Text("about"), member.Value.Text("section"), member.Key.Place)).ToImmutableArray();
        var systemOrder = systems.Select((system, index) => (system.Id, index)).ToDictionary(pair => pair.Id, pair => pair.index, StringComparer.Ordinal);

        // Rules are most of a large base. Each thread gathers by itself, and what was gathered is put together in the order of the rules.
        var chunks = Entities("rule").Chunk(RulesAtOnce).ToArray();
        var bound = new (BindingContext Context, Rule[] Rules)[chunks.Length];
        Parallel.For(0, chunks.Length, at =>
        {
            var own = new BindingContext();
            var binder = new RuleBinder(Conditions(own));
            bound[at] = (own, Array.ConvertAll(chunks[at], entity => binder.Rule(entity.File, new NodeReader(own, entity.Reader.Node))));
        });
        Array.ForEach(bound, one => context.Take(one.Context));

        var pictures = tree.Files.Where(file => file.Kind == KnowledgeLayout.PictureKind && file.Text.Length > 0).DistinctBy(file => file.Id).Select(PictureReader.Read).ToList();
        var kb = new KnowledgeBase(SettingsBinder.Bind(Root("kb")), vocabulary)
        {
            Systems = systems,
            Positions = new(positions, position => position.Id),
            PositionOrder = [.. positions.OrderBy(position => systemOrder.GetValueOrDefault(position.System, int.MaxValue))],
            Sources = new(Root("sources").Members("sources").Select(Source), source => source.Id),
            Chassis = new(chassis, one => one.Id),
            Donors = new(donors, one => one.Id),
            Gearboxes = new(Entities("gearbox").Select(entity => variants.Gearbox(entity.File, entity.Reader)), one => one.Id),
            Ecus = new(Entities("ecu").Select(entity => variants.Ecu(entity.File, entity.Reader)), one => one.Id),
            Connectors = new(Entities("connector").Select(entity => ElectricalBinder.Connector(entity.File, entity.Reader)), one => one.Id),
            Parts = new(Entities("part").Select(entity => variants.Part(entity.File, entity.Reader, conditions)), one => one.Id),
            Choices = new(Entities("choice").Select(entity => rules.Choice(entity.File, entity.Reader)), one => one.Id),
            Rules = new(bound.SelectMany(one => one.Rules), one => one.Id),
            Tasks = new(Entities("task").Select(entity => rules.Task(entity.File, entity.Reader)), one => one.Id),
            Register = files["register"].Any() ? RegisterBinder.Bind(Root("register")) : null,
            Articles = new(Entities("article").Select(entity => RuleBinder.Article(entity.File, entity.Reader)), one => one.Id),
            Pages = new(Entities(KnowledgeLayout.PageKind).Select(entity => RuleBinder.Page(entity.File, entity.Reader)), one => one.Id),
            Terms = GlossaryBinder.Bind(Root("glossary")),
            Pictures = new(pictures.Select(read => read.Picture).OfType<Picture>(), one => one.Id),
        };
        new ReferenceChecker(context, kb).Check();
        return (kb, [.. context.Findings, .. pictures.SelectMany(read => read.Findings)]);
    }

    private static ConditionNames Names(Vocabulary vocabulary, IEnumerable<(SourceFile File, NodeReader Reader)> choices, List<ChassisVariant> chassis, List<DonorVariant> donors, HashSet<string> positions, IReadOnlyCollection<string> parts)
    {
        var options = new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal);
        var kinds = new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal);
        foreach (var (file, reader) in choices)
        {
            var bound = reader.Members("options").Select(member => RuleBinder.Option(member.Key, member.Value)).ToList();
            options[file.Id] = [.. bound.Select(option => option.Id)];
            kinds[file.Id] =
            [
                .. bound.Select(option => option.Binds).OfType<OptionBinding>()
                    .Select(binding => binding.Kind ?? vocabulary.Facts.Find(binding.FactName!)?.To ?? "part")
                    .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
            ];
        }

        static ImmutableArray<string> Families(IEnumerable<Variant> variants) => [.. variants.Select(variant => variant.Family).Distinct(StringComparer.Ordinal)];
        static ImmutableArray<string> Ids(IEnumerable<Variant> variants) => [.. variants.Select(variant => variant.Id)];
        return new ConditionNames(
            options,
            kinds,
            new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal) { ["chassis"] = Families(chassis), ["donor"] = Families(donors) },
            new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal) { ["chassis"] = Ids(chassis), ["donor"] = Ids(donors) },
            positions,
            parts);
    }

    private static SourceEntry Source((ScalarNode Key, NodeReader Value) member) => new(
        member.Key.Text,
        member.Value.Text("title", member.Key.Text),
        member.Value.Text("kind", "reader-report"),
        member.Value.OptionalText("date"),
        member.Value.OptionalText("by"),
        member.Value.Flag("invented"),
        member.Value.Text("about"),
        member.Key.Place);
}
