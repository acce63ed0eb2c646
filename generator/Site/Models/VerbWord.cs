namespace Swapwright.Site.Models;

/// <summary>What is done at a position, as the mark beside its line says it.</summary>
public static class VerbWord
{
    public static string Of(Verb verb) => verb switch
    {
        Verb.Keep => "Keep",
        Verb.Take => "Take",
        Verb.Buy => "Buy",
        Verb.Make => "Make",
        Verb.Modify => "Modify",
        Verb.Move => "Move",
        _ => "Leave off",
    };
}
