using LureSim.Fuzz;

// A child process of the tests, to be killed.
if (args is ["write", var folder, var word])
{
    Writer.Write(folder, word);
    return 0;
}

if (FuzzOptions.Of(args) is not { } options)
{
    Console.Error.WriteLine(FuzzOptions.Usage);
    return 2;
}

return options.Mode == "soak" ? Soak.Run(options) : Fuzzer.Run(options) > 0 ? 1 : 0;
