namespace Swapwright.Site;

/// <summary>Where each page lies, from the site's root. Ids are kebab-case with single hyphens, so "--" joins them safely.</summary>
public static class SitePaths
{
    public const string Start = "index.html";
    public const string About = "about.html";
    public const string NotFound = "404.html";
    public const string Rules = "rules.html";
    public const string Positions = "positions.html";
    public const string Connectors = "connectors.html";
    public const string Articles = "articles.html";
    public const string Glossary = "glossary.html";
    public const string Findings = "findings.html";
    public const string Parts = "parts.html";
    public const string Tasks = "tasks.html";
    public const string Search = "search.html";
    public const string AtoZ = "a-z.html";
    public const string Changes = "changes.html";
    public const string Health = "health.html";

    public const string WhichChassis = "which-chassis.html";
    public const string WhichDonor = "which-donor.html";

    /// <summary>What the finder of the start page knows.</summary>
    public const string FinderData = "find/data.js";

    /// <summary>The headline guide; options in the order in which kb.yaml names its choices.</summary>
    public static string Guide(string chassis, string donor, IEnumerable<string> options) =>
        $"guide/{chassis}/{string.Join("--", options.Prepend(donor))}.html";

    /// <summary>A sheet of a guide, for the bench: "bench/quillet-c/marn-16--keep/wiring.html".</summary>
    public static string Bench(string guide, string sheet) => $"bench{guide["guide".Length..^".html".Length]}/{sheet}.html";

    /// <summary>A table for a spreadsheet beside the sheets for the bench.</summary>
    public static string Table(string guide, string table) => Path.ChangeExtension(Bench(guide, table), "csv");

    public static string Chassis(string id) => $"chassis/{id}.html";

    public static string Donor(string id) => $"donor/{id}.html";

    /// <summary>On the page of a chassis or donor: where its guides with a family begin.</summary>
    public static string With(string family) => family.Length == 0 ? "with-others" : $"with-{family}";

    /// <summary>The guides of a chassis against each other.</summary>
    public static string Differ(string chassis) => $"differ/{chassis}.html";

    public static string Position(string id) => $"position/{id}.html";

    public static string Rule(string id) => $"rule/{id}.html";

    public static string Article(string id) => $"article/{id}.html";

    public static string Page(string id) => $"page/{id}.html";

    /// <summary>A term is a line of the glossary.</summary>
    public static string Term(string id) => $"{Glossary}#term-{id}";

    public static string Finding(string id) => $"finding/{id}.html";

    public static string Connector(string id) => $"connector/{id}.html";

    /// <summary>A part is a line of the list of parts; the line's anchor is "part-" and its id.</summary>
    public static string Part(string id) => $"{Parts}#part-{id}";

    public static string Task(string id) => $"{Tasks}#task-{id}";

    /// <summary>A source is a paragraph of the about page.</summary>
    public static string Source(string id) => $"{About}#source-{id}";

    /// <summary>A path as the address at which a published site has it; null where the base does not say where it is published.</summary>
    public static string? Address(string? baseAddress, string path) => string.IsNullOrEmpty(baseAddress) ? null : $"{baseAddress.TrimEnd('/')}/{(path == Start ? "" : path)}";

    /// <summary>Way up from a page to the root: "" for "index.html", "../" for "rule/x.html".</summary>
    public static string PrefixOf(string path) => path.AsSpan().Count('/') switch
    {
        0 => "",
        1 => "../",
        2 => "../../",
        3 => "../../../",
        var depth => string.Concat(Enumerable.Repeat("../", depth)),
    };
}
