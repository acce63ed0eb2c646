using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Filters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Order;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Perfolizer.Horology;
using Swapwright.Benchmarks.Functions;

namespace Swapwright.Benchmarks;

/// <summary>Times and allocations of the functions that decide how fast the program is, one class a subject.</summary>
internal static class MeasureFunctions
{
    public static int Run(string[] names)
    {
        // In this process and few rounds: to build a program for each function and to wait for narrow bounds would take half an hour.
        var job = Job.Default.WithToolchain(InProcessEmitToolchain.Instance)
            .WithIterationTime(TimeInterval.FromMilliseconds(100)).WithWarmupCount(5).WithIterationCount(7);
        var config = ManualConfig.CreateEmpty()
            .AddJob(job)
            .AddDiagnoser(new MemoryDiagnoser(new MemoryDiagnoserConfig(displayGenColumns: false)))
            .AddColumn(TargetMethodColumn.Method, StatisticColumn.Mean, StatisticColumn.Median)
            .AddColumnProvider(DefaultColumnProviders.Metrics)
            .AddLogger(ConsoleLogger.Default)
            .AddExporter(MarkdownExporter.GitHub)
            .WithOrderer(new DefaultOrderer(SummaryOrderPolicy.Declared))
            .WithArtifactsPath(Path.Combine(ShippedBase.Root, "out", "benchmarks"))
            .WithOptions(ConfigOptions.JoinSummary);
        if (names.Length > 0)
        {
            config = config.AddFilter(new GlobFilter(names));
        }

        var reports = BenchmarkRunner.Run(typeof(MeasureFunctions).Assembly, config).SelectMany(summary => summary.Reports).ToList();
        return reports.Count > 0 && reports.TrueForAll(report => report.Success) ? 0 : 1;
    }
}
