using BenchmarkDotNet.Running;
using WorkWindows.Benchmarks.Validation;

if (args is ["validation", ..])
    return Report.Write(args.Length > 1 ? args[1] : "docs");
BenchmarkSwitcher.FromAssembly(typeof(Report).Assembly).Run(args);
return 0;
