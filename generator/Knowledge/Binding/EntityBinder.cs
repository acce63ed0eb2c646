using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>What every entity carries, read once.</summary>
internal static class EntityBinder
{
    public static T Common<T>(this T entity, NodeReader reader)
        where T : Entity => entity with
        {
            About = reader.Text("about"),
            Accepts = [.. reader.Items("accept").Select(item => new Accept(item.Text("finding"), item.Text("because"), item.Place))],
            Notes = [.. reader.Items("notes").Select(Note).OfType<DatedNote>()],
        };

    public static ImmutableArray<Caution> Cautions(NodeReader reader) =>
        [.. reader.Items("cautions").Select(item => new Caution(item.Text("about", "general"), item.Text("text"), item.Place))];

    /// <summary>Where an entity is said to be: its title, else the start of its file.</summary>
    public static Place PlaceOf(SourceFile file) =>
        file.Root is { } root && root.TryGet("title", out var title) ? title.Value.Place : file.Root?.Place ?? Place.Of(file.Path);

    private static DatedNote? Note(NodeReader item) =>
        DateOnly.TryParseExact(item.Text("date"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? new DatedNote(date, item.Text("text")) : null;
}
