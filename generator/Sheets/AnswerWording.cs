using Swapwright.Knowledge;

namespace Swapwright.Sheets;

/// <summary>What a builder does at a position, in one word.</summary>
public enum AnswerVerb
{
    Keep,
    Take,
    Buy,
    Make,
    Modify,
    Move,
    LeaveOff,
}

/// <summary>The words for an answer's source and treatment.</summary>
public static class AnswerWording
{
    public static AnswerVerb Verb(Answer answer) => (answer.Source, answer.Treatment) switch
    {
        ("none", _) or (_, "blank") => AnswerVerb.LeaveOff,
        ("chassis", "move") => AnswerVerb.Move,
        ("chassis", "modify") => AnswerVerb.Modify,
        ("chassis", _) => AnswerVerb.Keep,
        ("new", _) => AnswerVerb.Buy,
        ("made", _) => AnswerVerb.Make,
        _ => AnswerVerb.Take,
    };

    public static string Word(AnswerVerb verb) => verb switch
    {
        AnswerVerb.Keep => "keep",
        AnswerVerb.Take => "take",
        AnswerVerb.Buy => "buy",
        AnswerVerb.Make => "make",
        AnswerVerb.Modify => "modify",
        AnswerVerb.Move => "move",
        _ => "leave off",
    };

    /// <summary>As in "take the donor's and renew its wear parts".</summary>
    public static string Sentence(Answer answer)
    {
        var source = answer.Source switch
        {
            "chassis" => "keep the chassis's own",
            "donor" => "take the donor's",
            "other" => "take one from another vehicle",
            "new" => "buy new",
            "made" => "make one",
            _ => "leave it off",
        };
        return answer.Treatment switch
        {
            "refresh" => $"{source} and renew its wear parts",
            "modify" => $"{source} and adapt it",
            "move" => answer.Source == "chassis" ? $"{source} and move it" : $"{source} and fit it in another place",
            "blank" => answer.Source == "none" ? $"{source} and blank the opening" : $"{source}, blanked off",
            _ => source,
        };
    }
}
