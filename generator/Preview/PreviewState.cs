using System.Collections.Immutable;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;
using Swapwright.Space;

namespace Swapwright.Preview;

/// <summary>The base as it was last read, and the last site that could be made of it.</summary>
/// <param name="Version">Counts what was read; 0 before the first.</param>
/// <param name="SiteVersion">The version of which <paramref name="Site"/> was made.</param>
/// <param name="Site">null until the base has been sound once.</param>
internal sealed record PreviewState(int Version, int SiteVersion, PreviewSite? Site, ImmutableArray<PreviewFinding> Findings)
{
    // Parsed once: an edit of the knowledge changes none of them.
    private static readonly Lazy<Templates> s_builtIn = new(Templates.Embedded);

    public static PreviewState Nothing { get; } = new(0, 0, null, []);

    /// <summary>Reads the base anew. What is wrong becomes findings; the last good site stays.</summary>
    public PreviewState Next(string folder, CancellationToken cancellation)
    {
        var version = Version + 1;
        try
        {
            var proof = Proof.Of(folder, cancellation);
            var findings = proof.Findings.Select(finding => PreviewFinding.Of(finding, folder, proof.Tree)).ToImmutableArray();
            if (proof.HasErrors || proof.Resolution is null)
            {
                return this with { Version = version, Findings = findings };
            }

            var templates = s_builtIn.Value.Over(TemplateFolder.Of(folder));
            return new PreviewState(version, version, new PreviewSite(new SitePlan(proof, templates), templates, Site), findings);
        }
        catch (TemplateException problem)
        {
            return this with { Version = version, Findings = [PreviewFinding.Of(problem)] };
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or SpaceLimitException)
        {
            return this with { Version = version, Findings = [new PreviewFinding("error", "unreadable", problem.Message, folder, "", "")] };
        }
    }
}
