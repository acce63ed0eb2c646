using Swapwright.Site.Search;

namespace Swapwright.Tests.Site.Search;

public sealed class SearchWordsTests
{
    [Theory]
    [InlineData("Quillet C (1986–88), 1.6 l", "quillet c 1986 88 1 6 l")]
    [InlineData("variable-cam", "variable cam")]
    [InlineData("Kühler à café", "kühler à café")]
    [InlineData("Zylinder\u0308", "zylinder")]
    [InlineData(" – ", "")]
    public void Of_Text_AreLettersAndDigitsWithoutCase(string text, string words) =>
        Assert.Equal(words, string.Join(' ', SearchWords.Of(text)));

    [Fact]
    public void Besides_TextsThatRepeatTheTitle_GiveEachNewWordOnce() =>
        Assert.Equal("own early", SearchWords.Besides("Alternator kept", "alternator-own", "Own, early alternator"));

    [Theory]
    [InlineData("alternator", "A")]
    [InlineData("öl", "Ö")]
    [InlineData("(spare) wheel", "S")]
    [InlineData("3-way plug", "0–9")]
    [InlineData("", "0–9")]
    public void Letter_OfTitle_IsThatOfItsFirstWord(string title, string letter) => Assert.Equal(letter, SearchWords.Letter(title));
}
