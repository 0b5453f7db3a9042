using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Tagend.Benchmarks;

/// <summary>Runs <see cref="Parts"/>.</summary>
internal static class PartRuns
{
    /// <param name="once">A single run of each, which proves that it runs.</param>
    /// <returns>What was measured, and its median in milliseconds.</returns>
    public static IReadOnlyList<(string Name, double Milliseconds)> Run(string folder, bool once)
    {
        Directory.CreateDirectory(folder);
        using var log = new StreamLogger(Path.Combine(folder, "parts.log"));
        var job = once ? Job.Dry : Job.Default.WithWarmupCount(3).WithIterationCount(9);
        var config = ManualConfig.CreateEmpty()
            .AddJob(job.WithToolchain(InProcessEmitToolchain.Instance))
            .AddLogger(log)
            .AddColumnProvider(BenchmarkDotNet.Columns.DefaultColumnProviders.Instance)
            .WithOptions(ConfigOptions.DisableOptimizationsValidator)
            .WithArtifactsPath(folder);
        var summary = BenchmarkRunner.Run<Parts>(config);
        return [.. summary.Reports.Select(r => (r.BenchmarkCase.Descriptor.WorkloadMethodDisplayInfo.Trim('\''), MedianOf(r)))];
    }

    private static double MedianOf(BenchmarkReport report) => report.ResultStatistics is { } statistics
        ? statistics.Median / 1e6
        : throw new InvalidOperationException($"{report.BenchmarkCase.Descriptor.WorkloadMethod.Name} failed: see parts.log");
}
