namespace Swapwright.Knowledge.Binding;

/// <summary>register.yaml → the ids that have been published and those retired.</summary>
internal static class RegisterBinder
{
    public static IdRegister Bind(NodeReader root)
    {
        var published = root.Mapping("published");
        return new IdRegister(
            [.. IdRegister.Kinds.SelectMany(kind => published.Names(kind).Select(named => new PublishedId(kind, named.Id, named.Place)))],
            [.. root.Items("retired").Select(item => new RetiredId(item.Text("kind"), item.Text("id"), item.Text("because"), item.Names("successors"), item.PlaceOf("id")))]);
    }
}
