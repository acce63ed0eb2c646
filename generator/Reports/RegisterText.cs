using System.Collections.Immutable;
using Swapwright.Knowledge;

namespace Swapwright.Reports;

/// <summary>register.yaml as text: new ids are put in at their place in the alphabet, every other line stays as it is.</summary>
public static class RegisterText
{
    public const string File = "register.yaml";

    private const string Head = """
        # yaml-language-server: $schema=../schema/register.schema.json
        # Every id that has been published. `swapwright register` adds the new ones. None is taken out: what goes is written
        # under `retired` with the reason and what took its place, so that links and bookmarks find it.
        published:

        """;

    /// <param name="before">The file as it is; null where there is none yet.</param>
    /// <returns>The file as it should be, and what was added, as <c>kind id</c>.</returns>
    public static (string Text, IReadOnlyList<string> Added) With(string? before, KnowledgeBase kb)
    {
        var lines = (before ?? Head).ReplaceLineEndings("\n").TrimEnd('\n').Split('\n').ToList();
        var added = new List<string>();
        foreach (var kind in IdRegister.Kinds)
        {
            var known = kb.Register?.Published.Where(one => one.Kind == kind).Select(one => one.Id).ToHashSet(StringComparer.Ordinal) ?? [];
            foreach (var id in IdRegister.Present(kb, kind).Where(id => !known.Contains(id)))
            {
                Insert(lines, kind, id);
                added.Add($"{kind} {id}");
            }
        }

        return (string.Join('\n', lines) + "\n", added);
    }

    private static void Insert(List<string> lines, string kind, string id)
    {
        var head = lines.IndexOf($"  {kind}:");
        if (head < 0)
        {
            head = EndOfPublished(lines);
            lines.Insert(head, $"  {kind}:");
        }

        var at = head + 1;
        while (at < lines.Count && lines[at].StartsWith("    - ", StringComparison.Ordinal) && string.CompareOrdinal(lines[at][6..].Trim(), id) < 0)
        {
            at++;
        }

        lines.Insert(at, $"    - {id}");
    }

    // The kinds stand first in the file; whatever begins in the first column after them ends them.
    private static int EndOfPublished(List<string> lines)
    {
        var at = lines.IndexOf("published:") + 1;
        while (at < lines.Count && (lines[at].Length == 0 || lines[at][0] == ' '))
        {
            at++;
        }

        while (at > 0 && lines[at - 1].Length == 0)
        {
            at--;
        }

        return at;
    }
}
