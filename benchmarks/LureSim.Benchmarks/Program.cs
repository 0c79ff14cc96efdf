using BenchmarkDotNet.Running;
using LureSim.Benchmarks;

// "work-precision [folder]" writes the diagrams of docs/motion.md, "regret [folder]" the table of docs/decision.md; everything else goes to BenchmarkDotNet.
if (args is ["work-precision", ..])
    Precision.Write(args.Length > 1 ? args[1] : "docs");
else if (args is ["regret", ..])
    Regret.Write(args.Length > 1 ? args[1] : "docs");
else
    BenchmarkSwitcher.FromAssembly(typeof(Precision).Assembly).Run(args);
