using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Tests.Sheets;

/// <summary>Test classes that read the same sheets.</summary>
[CollectionDefinition(Name)]
public sealed class ShippedSheetsCollection : ICollectionFixture<ShippedSheets>
{
    public const string Name = "shipped sheets";
}

/// <summary>The sheets of every guide's recommended combination of the shipped base, made once.</summary>
public sealed class ShippedSheets
{
    public ShippedSheets()
    {
        var (builder, headlines) = (new SheetBuilder(Resolution), new Headlines(Resolution));
        Sheets = [.. headlines.All().Select(headline => builder.Build(headlines.Default(headline.Slice)))];
    }

    public Resolution Resolution { get; } = ShippedKnowledge.Proof().Resolution!;

    public IReadOnlyList<Sheet> Sheets { get; }
}
