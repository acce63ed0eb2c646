using Swapwright.Source;

namespace Swapwright.Tests.Source;

public class SharedTextTests
{
    [Fact]
    public void Of_TheSameAgain_IsTheSameText() => Assert.Same(SharedText.Of("answer.radiator"), SharedText.Of("answer.radiator"));

    /// <summary>Far more texts than the table has places, short and long, each asked twice.</summary>
    [Fact]
    public void Of_ManyTexts_GivesWhatIsAsked()
    {
        for (var round = 0; round < 2; round++)
        {
            for (var at = 0; at < 20_000; at++)
            {
                var text = new string((char)('a' + (at % 26)), at % 100) + FormattableString.Invariant($"{at}");
                Assert.Equal(text, SharedText.Of(text));
            }
        }
    }
}
