using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>What conditions may name, known before the entities themselves are bound.</summary>
/// <param name="Options">Choice id → option ids.</param>
/// <param name="BoundKinds">Choice id → the kinds of entity its options bind.</param>
/// <param name="Families">Subject → family ids.</param>
/// <param name="Variants">Subject → variant ids.</param>
/// <param name="Parts">The ids of parts, which answers name.</param>
internal sealed record ConditionNames(
    IReadOnlyDictionary<string, ImmutableArray<string>> Options,
    IReadOnlyDictionary<string, ImmutableArray<string>> BoundKinds,
    IReadOnlyDictionary<string, ImmutableArray<string>> Families,
    IReadOnlyDictionary<string, ImmutableArray<string>> Variants,
    IReadOnlyCollection<string> Positions,
    IReadOnlyCollection<string> Parts);

/// <summary>Mappings → conditions; every name is held against the vocabulary and the choices.</summary>
internal sealed class ConditionBinder(BindingContext context, Vocabulary vocabulary, FactBinder facts, ConditionNames names)
{
    public Condition Bind(SourceNode? node)
    {
        if (node is not MappingNode mapping)
        {
            return Condition.Always;
        }

        var terms = ImmutableArray.CreateBuilder<Condition>();
        foreach (var entry in mapping.Entries)
        {
            if (Term(entry) is { } term)
            {
                terms.Add(term);
            }
        }

        return terms.Count == 1 ? terms[0] : new AllOf(terms.ToImmutable(), mapping.Place);
    }

    private Condition? Term(MappingEntry entry)
    {
        var place = entry.Key.Place;
        switch (entry.Key.Text)
        {
            case "all":
                return new AllOf(List(entry.Value), place);
            case "any":
                return new AnyOf(List(entry.Value), place);
            case "not":
                return new NotOf(Bind(entry.Value), place);
        }

        var dot = entry.Key.Text.IndexOf('.', StringComparison.Ordinal);
        if (dot <= 0)
        {
            context.Report(FindingKinds.Vocabulary, $"`{entry.Key.Text}` asks nothing", place, "A condition names a fact (`chassis.year`), a choice (`choice.gearbox`), an answer (`answer.radiator`), or is `any`, `all` or `not`.");
            return null;
        }

        var subject = entry.Key.Text[..dot];
        var name = entry.Key.Text[(dot + 1)..];
        return subject switch
        {
            "choice" => ChoiceTerm(name, entry),
            "answer" => AnswerTerm(name, entry),
            _ => FactTerm(subject, name, entry),
        };
    }

    private ImmutableArray<Condition> List(SourceNode node) => node is SequenceNode sequence ? [.. sequence.Items.Select(Bind)] : [Bind(node)];

    private ChoiceTest? ChoiceTerm(string choice, MappingEntry entry)
    {
        if (!names.Options.TryGetValue(choice, out var options))
        {
            context.Unknown(FindingKinds.Reference, "choice", choice, names.Options.Keys, entry.Key.Place);
            return null;
        }

        var asked = ImmutableArray.CreateBuilder<string>();
        foreach (var scalar in Scalars(entry.Value))
        {
            if (scalar.Text == Choice.None || options.Contains(scalar.Text))
            {
                asked.Add(scalar.Text);
            }
            else
            {
                context.Unknown(FindingKinds.Reference, $"option of `{choice}`", scalar.Text, options, scalar.Place);
            }
        }

        return new ChoiceTest(choice, asked.ToImmutable(), entry.Key.Place);
    }

    private AnswerTest? AnswerTerm(string position, MappingEntry entry)
    {
        if (!names.Positions.Contains(position))
        {
            context.Unknown(FindingKinds.Reference, "position", position, names.Positions, entry.Key.Place);
            return null;
        }

        var reader = new NodeReader(context, entry.Value as MappingNode);
        foreach (var part in reader.Scalars("part").Where(part => !names.Parts.Contains(part.Text)))
        {
            context.Unknown(FindingKinds.Reference, "part", part.Text, names.Parts, part.Place);
        }

        return new AnswerTest(position, reader.Texts("source"), reader.Texts("treatment"), reader.Texts("part"), entry.Key.Place);
    }

    private FactTest? FactTerm(string subject, string fact, MappingEntry entry)
    {
        var place = entry.Key.Place;
        if (subject is not ("chassis" or "donor") && !names.Options.ContainsKey(subject))
        {
            context.Unknown(FindingKinds.Vocabulary, "subject or choice", subject, ["chassis", "donor", "choice", "answer", .. names.Options.Keys], place, "Begin with `chassis`, `donor` (the engine), `choice`, `answer`, or the id of a choice that brings something in.");
            return null;
        }

        if (subject is "chassis" or "donor" && BuiltIn(subject, fact, entry.Value) is { } builtIn)
        {
            return new FactTest(subject, fact, builtIn, place);
        }

        var declaration = Declaration(subject, fact);
        if (declaration is null)
        {
            var kinds = subject is "chassis" or "donor" ? [subject] : names.BoundKinds[subject];
            context.Unknown(FindingKinds.Vocabulary, $"fact of `{subject}`", fact, vocabulary.Facts.All.Where(known => kinds.Contains(known.Subject)).Select(known => known.Id), place, "Facts are listed in `vocabulary.yaml`, under `facts`: name one that stands there, or add it.");
            return null;
        }

        return Test(declaration, entry.Value) is { } test ? new FactTest(subject, fact, test, place) : null;
    }

    /// <summary>The declaration behind <c>gearbox.control</c>: the fact of the kind of entity that the choice binds.</summary>
    private FactDeclaration? Declaration(string subject, string fact) =>
        subject is "chassis" or "donor"
            ? vocabulary.Fact(subject, fact)
            : names.BoundKinds.GetValueOrDefault(subject, []).Select(kind => vocabulary.Fact(kind, fact)).FirstOrDefault(found => found is not null);

    private ValueTest? Test(FactDeclaration declaration, SourceNode node)
    {
        if (node is MappingNode mapping)
        {
            var reader = new NodeReader(context, mapping);
            if (mapping["equals"] is ScalarNode other)
            {
                Alone(mapping, "equals", ["from", "above", "to", "below"]);
                return OtherFact(declaration, other) is { } name ? new EqualsFactTest(name) : null;
            }

            if (declaration.Type != FactType.Number && !declaration.Ordered)
            {
                context.Report(FindingKinds.Vocabulary, $"`{declaration.Name}` has no order, so it has no range", mapping.Place, "List the values, or declare the fact `ordered: true` if its values are a scale.");
                return null;
            }

            return new RangeTest(BoundOf(declaration, reader, "from", "above"), BoundOf(declaration, reader, "to", "below"));
        }

        var values = Scalars(node).Select(scalar => facts.Value(declaration, scalar)).Where(value => value is not null).Select(value => value!.Value).ToImmutableArray();
        return new OneOfTest(values);
    }

    private Bound? BoundOf(FactDeclaration declaration, NodeReader reader, string inclusive, string exclusive)
    {
        var key = reader.Has(inclusive) ? inclusive : exclusive;
        Alone(reader.Node!, inclusive, [exclusive]);
        if (reader.Get(key) is not ScalarNode scalar)
        {
            return null;
        }

        if (scalar.Kind == ScalarKind.Text && scalar.Text.StartsWith("chassis.", StringComparison.Ordinal) | scalar.Text.StartsWith("donor.", StringComparison.Ordinal))
        {
            return OtherFact(declaration, scalar) is { } name ? new Bound(null, name, key == inclusive) : null;
        }

        return facts.Value(declaration, scalar) is { } value ? new Bound(value, null, key == inclusive) : null;
    }

    // Of two keys that ask the same end of a range only one would be heard.
    private void Alone(MappingNode test, string key, ReadOnlySpan<string> others)
    {
        foreach (var other in others)
        {
            if (test[key] is not null && test.TryGet(other, out var entry))
            {
                context.Report(FindingKinds.Vocabulary, $"`{key}` and `{other}` cannot stand in one test", entry.Key.Place, "Keep one of the two, or write two tests under `all`.");
            }
        }
    }

    private FactName? OtherFact(FactDeclaration declaration, ScalarNode scalar)
    {
        var dot = scalar.Text.IndexOf('.', StringComparison.Ordinal);
        var subject = dot > 0 ? scalar.Text[..dot] : "";
        var fact = scalar.Text[(dot + 1)..];
        if (vocabulary.Fact(subject, fact) is not { } other || subject is not ("chassis" or "donor"))
        {
            context.Unknown(FindingKinds.Vocabulary, "fact to compare with", scalar.Text, vocabulary.Facts.All.Where(known => known.Subject is "chassis" or "donor").Select(known => known.Name), scalar.Place);
            return null;
        }

        var comparable = other.Type == declaration.Type
            && other.Unit == declaration.Unit
            && (other.Type != FactType.OneOf || other.Options.Select(option => option.Id).SequenceEqual(declaration.Options.Select(option => option.Id)));
        if (!comparable)
        {
            context.Report(FindingKinds.Unit, $"`{declaration.Name}` and `{other.Name}` cannot be compared", scalar.Place, "Compare facts of one type, unit and list of values.", new RelatedPlace($"`{other.Name}` is declared here", other.Place));
            return null;
        }

        return new FactName(subject, fact);
    }

    private ValueTest? BuiltIn(string subject, string fact, SourceNode node)
    {
        switch (fact)
        {
            case "year":
                return Years(subject, node);
            case "family":
                return Names(names.Families[subject], $"family of {subject}", node);
            case "variant":
                return Names(names.Variants[subject], $"{subject} variant", node);
            default:
                return null;
        }
    }

    private ValueTest Years(string subject, SourceNode node)
    {
        var mapping = node as MappingNode;
        foreach (var other in (mapping?.Entries.Select(entry => entry.Value).OfType<ScalarNode>() ?? Scalars(node)).Where(scalar => scalar.Kind != ScalarKind.Integer))
        {
            context.Report(FindingKinds.Vocabulary, $"`{subject}.year` is held against years, not against `{other.Text}`", other.Place, "Write whole years, as in `{from: 1986, to: 1988}`.");
        }

        if (mapping is null)
        {
            return new OneOfTest([.. Scalars(node).Where(scalar => scalar.Kind == ScalarKind.Integer).Select(Number)]);
        }

        Alone(mapping, "from", ["above"]);
        Alone(mapping, "to", ["below"]);
        var reader = new NodeReader(context, mapping);
        return new RangeTest(Year(reader, "from") ?? Year(reader, "above"), Year(reader, "to") ?? Year(reader, "below"));
    }

    private static Bound? Year(NodeReader reader, string key) =>
        reader.Get(key) is ScalarNode { Kind: ScalarKind.Integer } scalar ? new Bound(Number(scalar), null, key is "from" or "to") : null;

    private static FactValue Number(ScalarNode scalar) =>
        new(FactType.Number, scalar.Text, int.TryParse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var year) ? year : 0, scalar.Place);

    private OneOfTest Names(ImmutableArray<string> known, string what, SourceNode node)
    {
        if (node is MappingNode)
        {
            context.Report(FindingKinds.Vocabulary, $"a {what} is asked for by its id, not by a range or by another fact", node.Place, "Write the id, or a list of ids.");
        }

        var asked = ImmutableArray.CreateBuilder<FactValue>();
        foreach (var scalar in Scalars(node))
        {
            if (known.Contains(scalar.Text))
            {
                asked.Add(new FactValue(FactType.OneOf, scalar.Text, 0, scalar.Place));
            }
            else
            {
                context.Unknown(FindingKinds.Reference, what, scalar.Text, known, scalar.Place);
            }
        }

        return new OneOfTest(asked.ToImmutable());
    }

    private static IEnumerable<ScalarNode> Scalars(SourceNode node) => node switch
    {
        ScalarNode scalar => [scalar],
        SequenceNode sequence => sequence.Items.OfType<ScalarNode>(),
        _ => [],
    };
}
