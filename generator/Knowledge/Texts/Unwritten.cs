namespace Swapwright.Knowledge.Texts;

/// <summary>What opens a text that somebody has yet to write. Drafts put it before theirs, so that none is taken for knowledge.</summary>
public static class Unwritten
{
    public const string Mark = "(to write)";

    public static string Text(string wanted) => $"{Mark} {wanted}";
}
