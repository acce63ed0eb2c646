using Swapwright.Knowledge.Texts;

namespace Swapwright.Tests.Knowledge;

public sealed class SafeUrlTests
{
    [Theory]
    [InlineData("index.html", AddressKind.BelowRoot)]
    [InlineData("guide/a/b--c.html#at-x", AddressKind.BelowRoot)]
    [InlineData("a..b/c...html", AddressKind.BelowRoot)]
    [InlineData("a/.well-known", AddressKind.BelowRoot)]
    [InlineData("a.html?b=c/../d", AddressKind.BelowRoot)]
    [InlineData("_a/b", AddressKind.BelowRoot)]
    [InlineData("a/%C3%A9.html", AddressKind.BelowRoot)]
    [InlineData("a/é.html", AddressKind.BelowRoot)]
    [InlineData("a#b/../c", AddressKind.BelowRoot)]
    [InlineData("#anchor", AddressKind.AsItStands)]
    [InlineData("https://a.example/b?c", AddressKind.AsItStands)]
    [InlineData("HTTP://a.example", AddressKind.AsItStands)]
    [InlineData("mailto:a@b.example", AddressKind.AsItStands)]
    [InlineData(null, AddressKind.Refused)]
    [InlineData("", AddressKind.Refused)]
    [InlineData(".", AddressKind.Refused)]
    [InlineData("..", AddressKind.Refused)]
    [InlineData("a/..", AddressKind.Refused)]
    [InlineData("a/../b", AddressKind.Refused)]
    [InlineData("./a", AddressKind.Refused)]
    [InlineData("a/.", AddressKind.Refused)]
    [InlineData("a/./b", AddressKind.Refused)]
    [InlineData("a//b", AddressKind.Refused)]
    [InlineData("/a", AddressKind.Refused)]
    [InlineData("//a.example", AddressKind.Refused)]
    [InlineData("?a", AddressKind.Refused)]
    [InlineData("a/%2e%2e/b", AddressKind.Refused)]
    [InlineData("a/%5cb", AddressKind.Refused)]
    [InlineData("a%3ab", AddressKind.Refused)]
    [InlineData("javascript:alert(1)", AddressKind.Refused)]
    [InlineData("data:text/html,a", AddressKind.Refused)]
    [InlineData("a b", AddressKind.Refused)]
    [InlineData("a\nb", AddressKind.Refused)]
    [InlineData("a\u200Bb", AddressKind.Refused)]
    [InlineData("a\"b", AddressKind.Refused)]
    public void Judge_Address_IsOfItsKind(string? address, AddressKind expected)
    {
        Assert.Equal(expected, SafeUrl.Judge(address));
        Assert.Equal(
            expected switch { AddressKind.AsItStands => address, AddressKind.BelowRoot => "../../" + address, _ => null },
            SafeUrl.Resolve(address, "../../"));
    }
}
