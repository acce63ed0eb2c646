using System.Text.Json;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Pages;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Site;

public sealed class ShopWordsTests
{
    /// <summary>A place to buy that the schema lets contributors write has words of its own, so no reader meets an id.</summary>
    [Fact]
    public void From_EveryPlaceOfTheSchema_IsSaidInWords()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(Reading.Repository(), "schema", "part.schema.json")));
        var places = schema.RootElement.GetProperty("properties").GetProperty("from").GetProperty("enum").EnumerateArray()
            .Where(value => value.ValueKind == JsonValueKind.String).Select(value => value.GetString()!).ToList();

        Assert.Contains("office", places);
        Assert.All(places.Where(place => place != "dealer"), place => Assert.NotEqual(place, ShopWords.From(place)));
    }

    /// <summary>Nobody moves what has only just been bought.</summary>
    [Theory]
    [InlineData("chassis", "keep the chassis's own and move it")]
    [InlineData("new", "buy new and fit it in another place")]
    public void Sentence_Move_FitsWhereItComesFrom(string source, string words) =>
        Assert.Equal(words, AnswerWording.Sentence(new Answer("oil-filter", source, "move", null, [], [], "", [], null, default)));
}
