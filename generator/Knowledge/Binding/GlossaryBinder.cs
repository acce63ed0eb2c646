namespace Swapwright.Knowledge.Binding;

/// <summary>glossary.yaml → the words of the trade.</summary>
internal static class GlossaryBinder
{
    public static EntitySet<GlossaryTerm> Bind(NodeReader root) => new(
        root.Members("terms").Select(member => new GlossaryTerm(member.Key.Text, member.Value.Text("term", member.Key.Text), member.Key.Place)
        {
            Short = member.Value.Text("short"),
            About = member.Value.Text("about"),
            Also = member.Value.Texts("also"),
            See = member.Value.Names("see"),
        }),
        term => term.Id);
}
