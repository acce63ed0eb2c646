using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The words that pages use for the enumerations of the knowledge.</summary>
internal static class ShopWords
{
    public static string From(string from) => from switch
    {
        "breaker" => "breaker's yard",
        "dealer" => "dealer",
        "parts-shop" => "parts shop",
        "wire-shop" => "wire shop",
        "make" => "to make yourself",
        "machine-shop" => "machine shop",
        "hose-shop" => "hose and cable shop",
        "workshop" => "licensed workshop",
        "office" => "inspection and papers",
        _ => from,
    };

    public static string CautionAbout(string about) => about switch
    {
        "fuel" => "Fuel",
        "brakes" => "Brakes",
        "lifting" => "Lifting",
        "airbag" => "Airbags",
        "heat" => "Hot parts",
        "electric" => "Electrics",
        "law" => "Law",
        _ => "General",
    };

    public static string Phase(string phase) => phase switch
    {
        "assess" => "Assess",
        "gather" => "Gather",
        "remove" => "Remove",
        "prepare" => "Prepare",
        "fit" => "Fit",
        "connect" => "Connect",
        "wire" => "Wire",
        "fill" => "Fill",
        "before-start" => "Before the first start",
        "first-start" => "First start",
        "road-test" => "Road test",
        _ => "Paper",
    };

    public static string Skill(string skill) => skill switch
    {
        "plain" => "plain work",
        "careful" => "careful work",
        "practised" => "practised hands",
        _ => "specialist",
    };

    public static int SkillRank(string skill) => skill switch
    {
        "plain" => 0,
        "careful" => 1,
        "practised" => 2,
        _ => 3,
    };

    public static Verb Verb(Answer answer) => (Verb)(int)AnswerWording.Verb(answer);

    public static string Sentence(Answer answer) => Capital(AnswerWording.Sentence(answer));

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
