namespace Swapwright.Worksheets.Effort;

/// <summary>
/// A guess at hours or money in three numbers. Mean (a + 4m + b) ∕ 6 and standard deviation (b − a) ∕ 6 as in the program
/// evaluation and review technique (Malcolm, Roseboom, Clark and Fazar, Operations Research 7 (1959) 646–669).
/// </summary>
/// <param name="Least">Everything goes right: a.</param>
/// <param name="Likely">The usual case: m.</param>
/// <param name="Most">Everything goes wrong: b.</param>
public readonly record struct Estimate(double Least, double Likely, double Most)
{
    /// <summary>Greatest that is believed, hours or money: beyond it sums lose their last digits.</summary>
    private const double Beyond = 1e12;

    /// <summary>Whether the three are numbers of at least nought in rising order.</summary>
    public bool IsSound => Least >= 0 && Least <= Likely && Likely <= Most && Most < Beyond;

    public double Mean => (Least + (4 * Likely) + Most) / 6;

    public double Deviation => (Most - Least) / 6;

    public Estimate Times(double factor) => new(Least * factor, Likely * factor, Most * factor);
}

/// <summary>
/// The sum of many guesses. Means add. Were the guesses independent of each other, variances would add as well, and the sum would
/// be narrow beyond belief: rust, a cold garage and a slow hand hold up every job of one build. So a share of their errors is taken as
/// common to all: variance = (1 − r) Σ σ² + r (Σ σ)², which is the sum's variance where any two guesses correlate by r. The sum is
/// taken as normal: nine builds in ten fall between <see cref="Low"/> and <see cref="High"/>, never beyond the outer sums.
/// </summary>
/// <param name="OuterLeast">Sum of every least guess.</param>
/// <param name="OuterMost">Sum of every most guess.</param>
public readonly record struct EstimateSum(double Mean, double Deviation, double OuterLeast, double OuterMost)
{
    // The 95th percentile of the standard normal distribution (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1).
    private const double Quantile = 1.6449;

    /// <summary>One build in twenty stays below.</summary>
    public double Low => Math.Max(OuterLeast, Mean - (Quantile * Deviation));

    /// <summary>One build in twenty goes beyond.</summary>
    public double High => Math.Min(OuterMost, Mean + (Quantile * Deviation));

    /// <param name="inCommon">Correlation r of any two guesses: 0 independent of each other, 1 all erring alike.</param>
    public static EstimateSum Of(IEnumerable<Estimate> estimates, double inCommon)
    {
        double mean = 0, variance = 0, deviations = 0, least = 0, most = 0;
        foreach (var one in estimates)
        {
            mean += one.Mean;
            variance += one.Deviation * one.Deviation;
            deviations += one.Deviation;
            least += one.Least;
            most += one.Most;
        }

        return new EstimateSum(mean, Math.Sqrt(((1 - inCommon) * variance) + (inCommon * deviations * deviations)), least, most);
    }

    /// <summary>Share of builds that need no more than <paramref name="limit"/>, by the normal distribution.</summary>
    public double ShareWithin(double limit) => Deviation > 0 ? NormalShare((limit - Mean) / Deviation) : limit >= Mean ? 1 : 0;

    // Φ(z) by formula 26.2.17 of Abramowitz and Stegun, Handbook of Mathematical Functions: error below 7.5e-8.
    private static double NormalShare(double z)
    {
        var t = 1 / (1 + (0.2316419 * Math.Abs(z)));
        var tail = Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI)
            * t * (0.319381530 + (t * (-0.356563782 + (t * (1.781477937 + (t * (-1.821255978 + (t * 1.330274429))))))));
        return z >= 0 ? 1 - tail : tail;
    }
}
