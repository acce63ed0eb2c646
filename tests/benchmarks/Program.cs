using System.Globalization;
using Swapwright.Benchmarks;

return args switch
{
    ["make-base", var folder, .. var options] => MakeBase.Run(folder, Options(options)),
    ["compare-solver", var folder, ..] => CompareSolver.Run(folder),
    ["functions", .. var names] => MeasureFunctions.Run(names),
    _ => Usage(),
};

static Dictionary<string, int> Options(string[] words)
{
    var options = new Dictionary<string, int>(StringComparer.Ordinal);
    for (var at = 0; at + 1 < words.Length; at += 2)
    {
        options[words[at].TrimStart('-')] = int.Parse(words[at + 1], NumberStyles.None, CultureInfo.InvariantCulture);
    }

    return options;
}

static int Usage()
{
    Console.Error.WriteLine("make-base FOLDER [--chassis N] [--donors N] [--choices N] [--positions N] [--rules N] [--seed N] [--faults N]");
    Console.Error.WriteLine("compare-solver FOLDER");
    Console.Error.WriteLine("functions [NAME...]     those whose full name matches, as in *Belt*; all where none is named");
    return 2;
}
