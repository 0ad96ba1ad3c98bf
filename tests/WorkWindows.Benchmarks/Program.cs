using BenchmarkDotNet.Running;
using WorkWindows.Benchmarks;
using WorkWindows.Benchmarks.Validation;

if (args is ["validation", ..])
    return Report.Write(args.Length > 1 ? args[1] : "docs");
if (args is ["readings", ..])
    return await ReadingsMeasure.RunAsync(args[1..]);
if (args is ["notices", ..])
    return await NoticesMeasure.RunAsync(args[1..]);
if (args is ["plan", ..])
{
    PlanMeasure.Run(tasks: 300, crews: 10, days: 60, seconds: 30);
    return 0;
}
if (args is ["morning", .. var filled])
    return await MorningMeasure.RunAsync(filled);
if (args is ["seasons", ..])
{
    SeasonMeasure.Run(firstYear: 1991, lastYear: 2014);
    return 0;
}
BenchmarkSwitcher.FromAssembly(typeof(Report).Assembly).Run(args);
return 0;
