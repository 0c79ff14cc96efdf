using LureSim.Fuzz;

if (FuzzOptions.Of(args) is not { } options)
{
    Console.Error.WriteLine(FuzzOptions.Usage);
    return 2;
}

return options.Mode == "soak" ? Soak.Run(options) : Fuzzer.Run(options) > 0 ? 1 : 0;
