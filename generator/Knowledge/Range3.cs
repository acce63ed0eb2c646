namespace Swapwright.Knowledge;

/// <summary>An estimate of money or time: least, most likely, most.</summary>
public readonly record struct Range3(decimal Least, decimal Likely, decimal Most)
{
    /// <summary>More than anything costs in any currency. Numbers are added up and drawn along axes, so there is an end to them.</summary>
    public const decimal MostMoney = 1_000_000_000;

    /// <summary>More than any task takes, h.</summary>
    public const decimal MostHours = 10_000;

    public static Range3 Exactly(decimal value) => new(value, value, value);

    public static Range3 operator +(Range3 left, Range3 right) =>
        new(left.Least + right.Least, left.Likely + right.Likely, left.Most + right.Most);

    public static Range3 Add(Range3 left, Range3 right) => left + right;
}
