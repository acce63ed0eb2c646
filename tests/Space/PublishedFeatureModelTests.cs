using System.Numerics;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>
/// Feature models with published numbers of products. Source of the mobile phone and the pizzas: the tests of
/// github.com/flamapy/bdd_metamodel, commit 898b107. Source of the relationship suite, product by product:
/// the FaMa test suite as held by the tests of github.com/flamapy/pysat_metamodel (products operation).
/// </summary>
public class PublishedFeatureModelTests
{
    [Fact]
    public void MobilePhone_Products_Fourteen()
    {
        var phone = MobilePhone();
        Assert.Equal(14, phone.Store.Count(phone.Products));
    }

    [Theory]
    [InlineData(3, 0)]
    [InlineData(4, 3)]
    [InlineData(5, 2)]
    [InlineData(6, 4)]
    [InlineData(7, 4)]
    [InlineData(8, 1)]
    [InlineData(9, 0)]
    public void MobilePhone_BySize_AsPublished(int features, int products)
    {
        var phone = MobilePhone();
        Assert.Equal(products, phone.Store.Count(phone.OfSize(features)));
    }

    [Fact]
    public void MobilePhone_CoreAndShares_AsPublished()
    {
        var phone = MobilePhone();
        string[] features = [.. phone.Store.Variables.Select(variable => variable.Name)];
        Assert.Equal(["MobilePhone", "Calls", "Screen"], features.Where(feature => phone.Store.Implies(phone.Products, phone.Has(feature))));
        Assert.All(features, feature => Assert.True(phone.Store.Intersects(phone.Products, phone.Has(feature))));
        Assert.Equal(0.5714, Share("HighResolution"), 4);
        Assert.Equal(0.5, Share("MP3"), 4);
        Assert.Equal(0.4286, Share("GPS"), 4);

        double Share(string feature) => (double)phone.Store.Count(phone.Store.And(phone.Products, phone.Has(feature))) / 14;
    }

    [Theory]
    [InlineData(7, 12)]
    [InlineData(8, 18)]
    [InlineData(9, 10)]
    [InlineData(10, 2)]
    public void Pizza_BySize_AsPublished(int features, int products)
    {
        var pizza = Pizza();
        Assert.Equal(products, pizza.Store.Count(pizza.OfSize(features)));
    }

    [Fact]
    public void Pizza_Products_FortyTwo()
    {
        var pizza = Pizza();
        Assert.Equal(42, pizza.Store.Count(pizza.Products));
    }

    [Fact]
    public void Pizza_ComplexConstraints_TwentyFive()
    {
        var pizza = PizzaTree();
        pizza.Hold(pizza.Then(pizza.Store.And(pizza.Has("CheesyCrust"), pizza.Has("Sicilian")), pizza.Has("Big")));
        pizza.Hold(pizza.Then(pizza.Has("Neapolitan"), pizza.Store.Not(pizza.Store.Or(pizza.Has("Salami"), pizza.Has("Ham")))));
        Assert.Equal(25, pizza.Store.Count(pizza.Products));
    }

    [Fact]
    public void RelationshipSuite_EveryModel_GivesListedProducts()
    {
        Check(Model("AB").Mandatory("A", "B"), "AB");
        Check(Model("AB").Optional("A", "B"), "A AB");
        Check(Model("ABC").Alternative("A", "B", "C"), "AB AC");
        Check(Model("ABC").Or("A", "B", "C"), "AB ABC AC");
        Check(Model("ABC").Optional("A", "B", "C").Excludes("B", "C"), "A AC AB");
        Check(Model("ABC").Optional("A", "B", "C").Requires("B", "C"), "A AC ABC");
        Check(Model("ABCDE").Mandatory("A", "B").Optional("B", "D").Optional("A", "C").Mandatory("C", "E"), "AB ABCE ABDCE ABD");
        Check(
            Model("ABCDEFG").Mandatory("A", "B").Or("B", "E", "F").Or("A", "C", "D").Mandatory("D", "G"),
            "ABEC ABEFC ABEFCDG ABFC ABECDG ABEDG ABEFDG ABFCDG ABFDG");
        Check(
            Model("ABCDEFG").Mandatory("A", "B").Alternative("B", "E", "F").Alternative("A", "C", "D").Mandatory("C", "G"),
            "ABED ABECG ABFCG ABFD");
        Check(Model("ABC").Mandatory("A", "B").Optional("A", "C").Requires("B", "C"), "ABC");
        Check(Model("ABC").Mandatory("A", "B", "C").Excludes("B", "C"), "");
        Check(
            Model("ABCDEFG").Optional("A", "B").Or("B", "E", "F").Or("A", "C", "D").Optional("C", "G"),
            "AC ACD ACDG ACG ABFCG ABEFCG ABEFC ABEFCD ABECD ABFCD ABFCDG ABFD ABFC ABEC ABECG ABECDG ABED ABEFD ABEFCDG AD");
        Check(
            Model("ABCDEFG").Optional("A", "B").Alternative("B", "E", "F").Alternative("A", "C", "D").Optional("D", "G"),
            "AC AD ABEC ABED ABEDG ABFDG ABFD ADG ABFC");
        Check(
            Model("ABCDEFGHI").Alternative("A", "B", "C").Or("B", "F", "G").Or("A", "D", "E").Alternative("E", "H", "I"),
            "ACD ACDEH ACDEI ABFDEI ABFGDEI ABFGD ABGD ABGDEI ABFD ABFEI ABFEH ABFDEH ACEH ACEI ABGEI ABFGEI ABFGDEH ABFGEH ABGEH ABGDEH");
        Check(Model("ABC").Or("A", "B", "C").Requires("B", "C"), "AC ACB");
        Check(Model("ABC").Or("A", "B", "C").Excludes("B", "C"), "AC AB");
        Check(Model("ABC").Alternative("A", "B", "C").Requires("B", "C"), "AC");
        Check(Model("ABC").Alternative("A", "B", "C").Excludes("B", "C"), "AC AB");
        Check(Model("ABC").Optional("A", "B", "C").Requires("B", "C").Excludes("B", "C"), "A AC");
        Check(
            Model("ABCDEFG").Mandatory("A", "B").Alternative("B", "D", "E").Optional("A", "C").Or("C", "F", "G").Requires("E", "F").Excludes("D", "G"),
            "ABD ABDCF ABECF ABECFG");

        static FeatureModel Model(string features) => new([.. features.Select(feature => feature.ToString())]);
    }

    private static void Check(FeatureModel model, string products)
    {
        var listed = products.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(new BigInteger(listed.Length), model.Store.Count(model.Products));
        Assert.All(listed, product => Assert.True(model.IsProduct(product.Select(feature => feature.ToString())), product));
        Assert.Equal(listed.Length == 0, model.Products.IsNone);
    }

    private static FeatureModel MobilePhone()
        => new FeatureModel("MobilePhone", "Calls", "GPS", "Screen", "Basic", "Colour", "HighResolution", "Media", "Camera", "MP3")
            .Mandatory("MobilePhone", "Calls", "Screen")
            .Optional("MobilePhone", "GPS", "Media")
            .Alternative("Screen", "Basic", "Colour", "HighResolution")
            .Or("Media", "Camera", "MP3")
            .Excludes("GPS", "Basic")
            .Requires("Camera", "HighResolution");

    private static FeatureModel PizzaTree()
        => new FeatureModel("Pizza", "Topping", "Salami", "Ham", "Mozzarella", "Size", "Normal", "Big", "Dough", "Neapolitan", "Sicilian", "CheesyCrust")
            .Mandatory("Pizza", "Topping", "Size", "Dough")
            .Or("Topping", "Salami", "Ham", "Mozzarella")
            .Alternative("Size", "Normal", "Big")
            .Alternative("Dough", "Neapolitan", "Sicilian")
            .Optional("Pizza", "CheesyCrust");

    private static FeatureModel Pizza() => PizzaTree().Requires("CheesyCrust", "Big");
}
