namespace Swapwright.Knowledge;

/// <summary>An estimate of money or time: least, most likely, most.</summary>
public readonly record struct Range3(decimal Least, decimal Likely, decimal Most)
{
    public static Range3 Exactly(decimal value) => new(value, value, value);

    public static Range3 operator +(Range3 left, Range3 right) =>
        new(left.Least + right.Least, left.Likely + right.Likely, left.Most + right.Most);

    public static Range3 Add(Range3 left, Range3 right) => left + right;
}
