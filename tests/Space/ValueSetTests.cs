using Swapwright.Space;

namespace Swapwright.Tests.Space;

public class ValueSetTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(63)]
    [InlineData(64)]
    [InlineData(65)]
    [InlineData(3000)]
    public void Algebra_AnySize_EqualsHashSets(int size)
    {
        var random = new Random(size);
        var a = Enumerable.Range(0, size).Where(_ => random.Next(2) == 0).ToHashSet();
        var b = Enumerable.Range(0, size).Where(_ => random.Next(3) == 0).ToHashSet();
        var (x, y) = (ValueSet.Of(size, [.. a]), ValueSet.Of(size, [.. b]));
        Assert.Equal(a.Order(), x);
        Assert.Equal(a.Count, x.Count);
        Assert.Equal(a.Intersect(b).Order(), x.And(y));
        Assert.Equal(a.Union(b).Order(), x.Or(y));
        Assert.Equal(a.Except(b).Order(), x.Minus(y));
        Assert.Equal(Enumerable.Range(0, size).Except(a), x.Not());
        Assert.Equal(a.Overlaps(b), x.Intersects(y));
        Assert.Equal(a.IsSubsetOf(b), x.IsSubsetOf(y));
        Assert.True(x.And(y).IsSubsetOf(x));
        Assert.True(x.Or(x.Not()).IsFull);
        Assert.True(x.And(x.Not()).IsEmpty);
        Assert.Equal(x, x.Not().Not());
        Assert.Equal(x.GetHashCode(), x.Not().Not().GetHashCode());
        Assert.Equal(a.Count == 0 ? -1 : a.Min(), x.Lowest);
    }

    [Fact]
    public void Of_ValueOutsideDomain_Refused()
        => Assert.Throws<ArgumentOutOfRangeException>(() => ValueSet.Of(3, 3));

    [Fact]
    public void And_OtherDomain_Refused()
        => Assert.Throws<ArgumentException>(() => ValueSet.Full(3).And(ValueSet.Full(4)));
}
