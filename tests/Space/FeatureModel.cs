using System.Collections.Immutable;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>A feature model said with regions: one variable of two values a feature, value 1 means chosen.</summary>
internal sealed class FeatureModel
{
    private readonly List<string> _features;
    private Region _products;

    public FeatureModel(params string[] features)
    {
        _features = [.. features];
        Store = new RegionStore([.. features.Select(feature => SmallSpace.Variable(feature, 2))]);
        _products = Has(features[0]);
    }

    public RegionStore Store { get; }

    public Region Products => _products;

    public Region Has(string feature) => Store.Where(_features.IndexOf(feature), ValueSet.Of(2, 1));

    public FeatureModel Mandatory(string parent, params string[] children) => Each(children, child => Same(Has(parent), Has(child)));

    public FeatureModel Optional(string parent, params string[] children) => Each(children, child => Then(Has(child), Has(parent)));

    public FeatureModel Or(string parent, params string[] children) => Hold(Same(Has(parent), Store.OrAll(children.Select(Has))));

    public FeatureModel Alternative(string parent, params string[] children)
    {
        foreach (var a in children)
        {
            Each([.. children.Where(b => b != a)], b => Store.Not(Store.And(Has(a), Has(b))));
        }

        return Or(parent, children);
    }

    public FeatureModel Requires(string feature, string needed) => Hold(Then(Has(feature), Has(needed)));

    public FeatureModel Excludes(string feature, string barred) => Hold(Store.Not(Store.And(Has(feature), Has(barred))));

    public FeatureModel Hold(Region constraint)
    {
        _products = Store.And(_products, constraint);
        return this;
    }

    public Region Then(Region a, Region b) => Store.Or(Store.Not(a), b);

    /// <summary>Products with exactly so many features, as a region of its own met with the products.</summary>
    public Region OfSize(int features)
    {
        var exactly = new Region[features + 2];
        Array.Fill(exactly, Region.None);
        exactly[0] = Region.All;
        foreach (var feature in _features)
        {
            for (var size = features; size >= 0; size--)
            {
                var without = Store.Minus(exactly[size], Has(feature));
                exactly[size] = size == 0 ? without : Store.Or(without, Store.And(exactly[size - 1], Has(feature)));
            }
        }

        return Store.And(_products, exactly[features]);
    }

    public bool IsProduct(IEnumerable<string> chosen)
    {
        var set = chosen.ToImmutableHashSet();
        return Store.Contains(_products, _features.Select(feature => set.Contains(feature) ? 1 : 0).ToArray());
    }

    private Region Same(Region a, Region b) => Store.And(Then(a, b), Then(b, a));

    private FeatureModel Each(string[] children, Func<string, Region> constraint)
        => children.Aggregate(this, (model, child) => model.Hold(constraint(child)));
}
