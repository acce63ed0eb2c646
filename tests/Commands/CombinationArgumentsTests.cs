using Swapwright.Commands;
using Swapwright.Tests.Reports;

namespace Swapwright.Tests.Commands;

public class CombinationArgumentsTests
{
    [Theory]
    [InlineData("hazel-90 alder-14", "hazel-90 alder-14 cooling=none gearbox=keep")]
    [InlineData("hazel-90 alder-16", "hazel-90 alder-16 cooling=wide gearbox=keep")]
    [InlineData("hazel-93 alder-16 cooling=donor gearbox=donor", "hazel-93 alder-16 cooling=donor gearbox=donor")]
    [InlineData("hazel-90 alder-14 gearbox=donor", "hazel-90 alder-14 cooling=none gearbox=donor")]
    [InlineData("hazel-90 alder-14 cooling=none", "hazel-90 alder-14 cooling=none gearbox=keep")]
    public void Read_Arguments_FollowTheRecommendationsWhereNothingIsSaid(string arguments, string wanted) =>
        Assert.Equal(wanted, Rules.DrawnBase.Name(SmallBase.Resolution.Space.Witness(Read(arguments))));

    [Theory]
    [InlineData("hazel-91 alder-14", "no chassis `hazel-91`; did you mean `hazel-9")]
    [InlineData("hazel-90 elm", "no donor `elm`; known: alder-14, alder-16")]
    [InlineData("hazel-90 alder-14 gearbx=keep", "no choice `gearbx`; did you mean `gearbox`?")]
    [InlineData("hazel-90 alder-14 gearbox=kep", "no option of `gearbox` `kep`; did you mean `keep`?")]
    [InlineData("hazel-90 alder-14 gearbox", "`gearbox` is no choice: write `choice=option`, as in `gearbox=keep`")]
    [InlineData("hazel-90 alder-14 =keep", "`=keep` is no choice: write `choice=option`, as in `gearbox=keep`")]
    [InlineData("hazel-90 alder-14 cooling=wide", "there is no choice of `cooling` here, given the chassis, the donor and the options before it")]
    [InlineData("hazel-90 alder-16 cooling=none", "`cooling` has to be chosen here: wide, donor")]
    [InlineData("hazel-90 alder-16 gearbox=none", "`gearbox` has to be chosen here: keep, donor")]
    public void Read_WordsThatNameNothing_SayWhatIsKnown(string arguments, string message) =>
        Assert.StartsWith(message, Assert.Throws<ArgumentProblemException>(() => Read(arguments)).Message, StringComparison.Ordinal);

    [Fact]
    public void Read_OneChoiceTwice_IsRefused() =>
        Assert.Contains("gearbox", Assert.Throws<ArgumentProblemException>(() => Read("hazel-93 alder-14 gearbox=keep gearbox=donor")).Message, StringComparison.Ordinal);

    private static int[] Read(string arguments)
    {
        var words = arguments.Split(' ');
        return CombinationArguments.Read(SmallBase.Resolution, words[0], words[1], words[2..]);
    }
}
