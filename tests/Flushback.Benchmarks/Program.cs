using BenchmarkDotNet.Running;

// dotnet run -c Release --project tests/Flushback.Benchmarks -- --filter '*'
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
