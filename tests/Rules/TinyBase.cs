namespace Swapwright.Tests.Rules;

/// <summary>The least base there can be: one chassis, two donors, two positions; a test adds rules and choices.</summary>
internal static class TinyBase
{
    public static MemoryBase With(params (string Path, string Text)[] files)
    {
        var tiny = new MemoryBase
        {
            ["kb.yaml"] = "title: Tiny\nas-of: 2026-03-01\n",
            ["vocabulary.yaml"] = "facts: {donor: {power: {title: Power, type: number, unit: kW}}}\n",
            ["positions.yaml"] = "systems: {all: {title: All}}\npositions: {a: {system: all, title: A}, b: {system: all, title: B}, c: {system: all, title: C}}\n",
            ["chassis/car.yaml"] = "title: Car\nyears: {from: 1990, to: 1993}\n",
            ["engines/large.yaml"] = "title: Large\nyears: {from: 1995, to: 1995}\nfacts: {power: 90}\n",
            ["engines/small.yaml"] = "title: Small\nyears: {from: 1995, to: 1995}\nfacts: {power: 60}\n",
        };
        foreach (var (path, text) in files)
        {
            tiny[path] = text;
        }

        return tiny;
    }
}
