using LureSim.Mutation;

// A child process: run the classes with the mutant that the environment names; the failed test's name on the last line.
if (args is ["tests", .. var classes])
{
    string? failed = TestRun.FirstFailure(classes);
    Console.WriteLine(failed is null ? "" : "\n" + failed.ReplaceLineEndings(" "));
    return failed is null ? 0 : 1;
}

if (RunOptions.Of(args) is not { } options)
{
    Console.Error.WriteLine(RunOptions.Usage);
    return 2;
}

return new MutationRun(options).Run();
