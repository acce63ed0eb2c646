using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>Choices, positions, rules, tasks and articles: everything that speaks of the space.</summary>
internal sealed class RuleBinder(ConditionBinder conditions)
{
    public Position Position(ScalarNode key, NodeReader reader) => new(
        key.Text,
        reader.Text("title", key.Text),
        reader.OptionalId("system", "system") ?? "",
        reader.Text("about"),
        conditions.Bind(reader.Get("applies")),
        reader.OptionalText("safety"),
        key.Place);

    public Choice Choice(SourceFile file, NodeReader reader) => new Choice(file.Id, reader.Text("title", file.Id), EntityBinder.PlaceOf(file))
    {
        Question = reader.Text("question"),
        Order = reader.Integer("order", 1000),
        Applies = conditions.Bind(reader.Get("applies")),
        Options = [.. reader.Members("options").Select(member => Option(member.Key, member.Value))],
        Recommendations =
        [
            .. reader.Items("recommend").Select(item => new Recommendation(item.Text("option"), conditions.Bind(item.Get("when")), item.Text("because"), item.PlaceOf("option"))),
        ],
    }.Common(reader);

    public static ChoiceOption Option(ScalarNode key, NodeReader reader)
    {
        OptionBinding? binding = null;
        if (reader.Get("binds") is MappingNode { Entries: [{ Value: ScalarNode value } entry] })
        {
            binding = entry.Key.Text == "fact" ? new OptionBinding(value.Text, null, null, value.Place) : new OptionBinding(null, entry.Key.Text, value.Text, value.Place);
        }

        return new ChoiceOption(key.Text, reader.Text("title", key.Text), reader.Text("about"), binding, key.Place);
    }

    public Rule Rule(SourceFile file, NodeReader reader)
    {
        var then = reader.Mapping("then");
        return new Rule(file.Id, reader.Text("title", file.Id), EntityBinder.PlaceOf(file))
        {
            When = conditions.Bind(reader.Get("when")),
            Answers = [.. then.Members("answers").Select(member => Answer(member.Key, member.Value))],
            Excludes = then.Get("exclude") is ScalarNode exclude && exclude.Kind != ScalarKind.Null && exclude.Text != "false",
            ExcludeText = then.Get("exclude") is ScalarNode { Kind: ScalarKind.Text } text ? text.Text : "",
            Requires = then.Get("require") is { } require ? conditions.Bind(require) : null,
            Values = [.. then.Members("values").Select(member => Value(member.Key, member.Value))],
            Tasks = then.Ids("tasks", "task"),
            Cautions = EntityBinder.Cautions(then),
            Mistakes = then.Texts("mistakes"),
            Advises = [.. then.Items("advise").Select(item => new Advice(item.Text("text"), item.OptionalText("option"), item.OptionalId("donor", "donor"), item.PlaceOf("option")))],
            Overrides = reader.Names("overrides"),
            Because = reader.Text("because"),
            Sources = reader.Ids("sources", "source"),
            Standing = reader.Text("standing", "reported"),
            Checked = reader.OptionalText("checked"),
            CheckedPlace = reader.PlaceOf("checked"),
        }.Common(reader);
    }

    public WorkTask Task(SourceFile file, NodeReader reader) => new WorkTask(file.Id, reader.Text("title", file.Id), EntityBinder.PlaceOf(file))
    {
        Phase = reader.Text("phase", "fit"),
        When = reader.Get("when") is MappingNode when ? conditions.Bind(when) : null,
        After = reader.Names("after"),
        Needs = reader.Names("needs"),
        Hours = reader.OptionalRange("hours", Unit.One, Range3.MostHours) ?? default,
        Skill = reader.Text("skill", "plain"),
        People = reader.Integer("people", 1),
        Tools = Tools(reader),
        Consumables = reader.Texts("consumables"),
        Steps = reader.Texts("steps"),
        Cautions = EntityBinder.Cautions(reader),
        Mistakes = reader.Texts("mistakes"),
        Fasteners = TighteningBinder.Fasteners(reader, conditions),
        Refresh = reader.Flag("refresh"),
        WhyNow = reader.Text("why-now"),
    }.Common(reader);

    // A tool that is always asked for is written as its name alone.
    private ImmutableArray<TaskTool> Tools(NodeReader task) => task.Get("tools") is SequenceNode tools ? [.. tools.Items.Select(item => Tool(task.Context, item)).OfType<TaskTool>()] : [];

    private TaskTool? Tool(BindingContext context, SourceNode item) => item switch
    {
        ScalarNode name => new TaskTool(name.Text, null, name.Place),
        MappingNode mapping when new NodeReader(context, mapping) is var reader => new TaskTool(reader.Text("title"), reader.Get("when") is MappingNode test ? conditions.Bind(test) : null, mapping.Place),
        _ => null,
    };

    public static Article Article(SourceFile file, NodeReader reader) => new Article(file.Id, reader.Text("title", file.Id), EntityBinder.PlaceOf(file))
    {
        Summary = reader.Text("summary"),
        Body = file.Body ?? "",
        BodyLine = file.BodyLine,
        Topic = reader.Text("topic"),
        Positions = reader.Names("positions"),
        Tasks = reader.Names("tasks"),
        Sources = reader.Ids("sources", "source"),
        Standing = reader.Text("standing"),
        Checked = reader.OptionalText("checked"),
        CheckedPlace = reader.PlaceOf("checked"),
        Order = reader.Integer("order", 1000),
    }.Common(reader);

    public static TextPage Page(SourceFile file, NodeReader reader) => new(file.Id, reader.Text("title", file.Id), EntityBinder.PlaceOf(file))
    {
        Summary = reader.Text("summary"),
        Body = file.Body ?? "",
        InNavigation = reader.Text("linked") == "navigation",
        Order = reader.Integer("order", 1000),
    };

    private static Answer Answer(ScalarNode key, NodeReader reader) => new(
        key.Text,
        reader.Text("source", "none"),
        reader.Text("treatment", "as-is"),
        reader.OptionalId("part", "part"),
        reader.Ids("also", "part"),
        reader.Texts("steps"),
        reader.Text("notes"),
        reader.Texts("mistakes"),
        reader.OptionalId("article", "article"),
        key.Place)
    {
        Closes = reader.Ids("closes", "port"),
    };

    private static StatedValue Value(ScalarNode key, NodeReader reader) => new(
        key.Text,
        reader.Number("value", ComputedValues.UnitOf(key.Text), 0),
        reader.Number("tolerance", ComputedValues.UnitOf(key.Text), 0, 0),
        key.Place)
    {
        WrittenDown = reader.Flag("written-down"),
    };
}
