using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Tests.Rules;

/// <summary>Regions written as a contributor would, read back by the reader of knowledge files.</summary>
public sealed class RegionYamlTests
{
    [Fact]
    public void Write_RegionsOfDrawnBases_ReadsBackAsTheRegion()
    {
        var written = 0;
        for (var seed = 0; seed < 80; seed++)
        {
            var drawn = new DrawnBase(seed);
            var store = drawn.Resolution.Store;
            var yaml = new RegionYaml(drawn.Resolution);
            var whens = drawn.Base.Rules.All.Take(6).Select(drawn.Resolution.When).ToList();
            foreach (var region in whens.Concat(whens.Zip(whens.Skip(1), store.And)).Concat(whens.Zip(whens.Skip(2), store.Minus)))
            {
                foreach (var context in new[] { Swapwright.Space.Region.All, drawn.Resolution.Domain, drawn.Resolution.Buildable })
                {
                    if (yaml.Write(region, context) is { } text && store.Intersects(region, context))
                    {
                        written++;
                        Assert.Equal(store.And(region, context), store.And(Read(drawn, text), context));
                    }
                }
            }
        }

        Assert.True(written > 1500, $"only {written.ToString(System.Globalization.CultureInfo.InvariantCulture)} regions were written");
    }

    [Fact]
    public void Write_TheWholeContext_AsksNothing()
    {
        var drawn = new DrawnBase(3);
        Assert.Equal("{}", new RegionYaml(drawn.Resolution).Write(drawn.Resolution.Buildable, drawn.Resolution.Buildable));
    }

    /// <summary>The condition as the binder reads it in a file, in the space of the base that it was written for.</summary>
    private static Swapwright.Space.Region Read(DrawnBase drawn, string yaml)
    {
        drawn.Files["rules/front/zz-read-back.yaml"] = $"title: Read back\nwhen: {yaml}\nthen: {{mistakes: [none]}}\n";
        var again = drawn.Files.Bind();
        return drawn.Resolution.RegionOf(again.Rules["zz-read-back"].When);
    }
}
