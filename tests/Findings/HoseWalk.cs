using System.Numerics;
using Swapwright.Diagnostics;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Hoses;

namespace Swapwright.Tests.Findings;

/// <summary>Confirms findings about hoses by putting every combination's hoses together: as many sheets show the problem as the finding says.</summary>
internal static class HoseWalk
{
    public static void Confirm(KnowledgeBase kb, Finding finding)
    {
        var assembly = new HoseAssembly(kb);
        Assert.True(Shows(kb, assembly, finding, OneCombination.Of(kb, finding.Witness!)), $"the witness does not show: {finding.Message}");
        Assert.Equal((BigInteger)OneCombination.Every(kb).Count(one => Shows(kb, assembly, finding, one)), finding.Touches);
    }

    /// <summary>No sheet on which the answer stands closes the port.</summary>
    public static void ConfirmIdle(KnowledgeBase kb, Finding finding, Answer closing)
    {
        var assembly = new HoseAssembly(kb);
        var port = Assert.Single(closing.Closes, id => finding.Message.Contains($"`{id}`", StringComparison.Ordinal));
        var stands = OneCombination.Every(kb).Where(one => one.IsBuildable && one.AnswersAt(closing.Position).Contains(closing)).ToList();
        Assert.NotEmpty(stands);
        Assert.All(stands, one => Assert.DoesNotContain(Hoses(kb, assembly, one).Blanked, blanked => blanked.Port.Id == port));
    }

    private static bool Shows(KnowledgeBase kb, HoseAssembly assembly, Finding finding, OneCombination one)
    {
        if (!one.IsBuildable)
        {
            return false;
        }

        return Hoses(kb, assembly, one).Problems.Any(problem => finding.Id switch
        {
            "port-clash" => problem is PortUsedTwice twice && finding.Message.StartsWith($"`{twice.PortId}` is wanted by {string.Join(" and ", twice.Hoses.OrderBy(id => kb.Vocabulary.Hoses[id].Order).Select(id => $"`{id}`"))} ", StringComparison.Ordinal),
            "open-port" => problem is PortLeftOpen open && finding.Message.Contains($"`{open.PortId}`", StringComparison.Ordinal) && kb.Vocabulary.Ports.Ids.First(id => finding.Message.StartsWith($"`{id}` ", StringComparison.Ordinal) || finding.Message.EndsWith($" joins `{id}`", StringComparison.Ordinal)) == open.PortId,
            _ => problem is SizesDiffer or StockDoesNotFit or ClassTooLow && finding.Message.Contains($"`{problem.Subject}`", StringComparison.Ordinal),
        });
    }

    private static HoseSheet Hoses(KnowledgeBase kb, HoseAssembly assembly, OneCombination one) =>
        assembly.Assemble(one.Donor, one.Chassis, position => one.AnswersAt(position) is [var first, ..] ? first : null, kb.Positions.Ids.SelectMany(one.AnswersAt))!;
}
