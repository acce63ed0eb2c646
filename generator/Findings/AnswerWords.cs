using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>Answers in a few words, for messages.</summary>
internal static class AnswerWords
{
    public static string Short(Answer answer) =>
        $"{answer.Source}, {answer.Treatment}{(answer.Part is { } part ? $", part `{part}`" : "")}{(answer.Also.IsEmpty ? "" : $", also {string.Join(", ", answer.Also.Select(also => $"`{also}`"))}")}";
}
