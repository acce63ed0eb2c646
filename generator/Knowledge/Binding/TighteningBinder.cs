using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>Fasteners and fillings.</summary>
internal static class TighteningBinder
{
    public static ImmutableArray<FastenerEntry> Fasteners(NodeReader parent, ConditionBinder conditions)
    {
        var fasteners = ImmutableArray.CreateBuilder<FastenerEntry>();
        foreach (var (key, reader) in parent.Members("fasteners"))
        {
            var entry = new FastenerEntry(
                key.Text,
                reader.Text("title", key.Text),
                reader.Text("thread"),
                reader.Text("class"),
                reader.Integer("count", 1),
                reader.OptionalNumber("nut-factor", Unit.One, 0.05m, 0.5m),
                reader.Flag("lubricated"),
                reader.OptionalNumber("stated", Unit.NewtonMetre, 0.5m, 1000),
                reader.OptionalNumber("angle", Unit.Degree, 1, 360),
                reader.OptionalId("stated-by", "source"),
                reader.Flag("to-yield"),
                reader.Flag("once"),
                reader.Text("into"),
                key.Place)
            {
                When = reader.Get("when") is MappingNode when ? conditions.Bind(when) : null,
                LookUp = reader.Flag("look-up"),
            };
            if (entry is { StatedNm: not null, LookUp: true })
            {
                parent.Context.Report(FindingKinds.Schema, $"`{key.Text}` is to be looked up, although its figure is stated", key.Place, "Take out `look-up`, or the figure.");
            }

            if (entry is { StatedNm: null, ToYield: false, LookUp: false, Class.Length: 0 })
            {
                parent.Context.Report(FindingKinds.Schema, $"nothing says how far `{key.Text}` is tightened", key.Place, "Give it the manual's figure under `stated`, or its strength `class`, or `look-up: true` where only the manual can say it (`to-yield: true` for a bolt that is stretched).");
            }

            fasteners.Add(entry);
        }

        return fasteners.ToImmutable();
    }

    public static ImmutableArray<FluidEntry> Fluids(NodeReader parent) =>
    [
        .. parent.Members("fluids").Select(member => new FluidEntry(
            member.Key.Text,
            member.Value.Text("grade"),
            member.Value.OptionalNumber("amount", member.Key.Text == "refrigerant" ? Unit.Kilogram : Unit.Litre, 0.05m, 50),
            member.Value.OptionalId("at", "position"),
            member.Value.OptionalId("needs", "position"),
            member.Key.Place)),
    ];
}
