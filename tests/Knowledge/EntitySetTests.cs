using Swapwright.Knowledge;

namespace Swapwright.Tests.Knowledge;

public sealed class EntitySetTests
{
    [Fact]
    public void Find_OfALazyList_IsTheVeryEntityThatIsListed()
    {
        var set = new EntitySet<VehicleSystem>(new[] { "b", "a" }.Select(id => new VehicleSystem(id, id, "", "", default)), system => system.Id);

        Assert.Equal(["a", "b"], set.Ids);
        Assert.Same(set.All[0], set.Find("a"));
    }
}
