using System.Text;
using LureSim.Cli;
using LureSim.Cli.Hosting;

if (OperatingSystem.IsWindows())
    Console.OutputEncoding = Encoding.UTF8;

using var cancellation = new CancellationTokenSource();
Console.CancelKeyPress += (_, pressed) =>
{
    // The first Ctrl-C lets the command clean up; a second one ends the process at once.
    if (!cancellation.IsCancellationRequested)
    {
        pressed.Cancel = true;
        cancellation.Cancel();
    }
};
return await LureSimApp.RunAsync(args, CliHost.ForProcess(new Pipeline()), cancellation.Token);
