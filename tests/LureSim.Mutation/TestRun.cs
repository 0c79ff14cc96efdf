using System.Reflection;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace LureSim.Mutation;

/// <summary>Runs test classes in this process until the first test fails.</summary>
internal static class TestRun
{
    /// <summary>Runs classes, one after the other.</summary>
    /// <param name="classes">Full names of classes; the first words of a name are those of its assembly.</param>
    /// <returns>The name of the test that failed, or null.</returns>
    /// <exception cref="InvalidOperationException">A class has no tests.</exception>
    public static string? FirstFailure(IEnumerable<string> classes)
    {
        foreach (string name in classes)
        {
            var assembly = Assembly.Load(string.Join('.', name.Split('.')[..2]));
            using var framework = new XunitTestFramework(new Silence());
            using ITestFrameworkDiscoverer discoverer = framework.GetDiscoverer(Reflector.Wrap(assembly));
            using var found = new Discovery();
            discoverer.Find(name, includeSourceInformation: false, found, new Options());
            found.Done.WaitOne();
            if (found.Cases.Count == 0) throw new InvalidOperationException($"No tests in {name}.");
            using ITestFrameworkExecutor executor = framework.GetExecutor(assembly.GetName());
            using var execution = new Execution();
            executor.RunTests(found.Cases, execution, new Options());
            execution.Done.WaitOne();
            if (execution.Failed is { } failed) return failed;
        }

        return null;
    }

    private sealed class Silence : IMessageSink
    {
        public bool OnMessage(IMessageSinkMessage message) => true;
    }

    private sealed class Discovery : IMessageSink, IDisposable
    {
        public ManualResetEvent Done { get; } = new(false);

        public List<ITestCase> Cases { get; } = [];

        public bool OnMessage(IMessageSinkMessage message)
        {
            if (message is ITestCaseDiscoveryMessage found) Cases.Add(found.TestCase);
            if (message is IDiscoveryCompleteMessage) Done.Set();
            return true;
        }

        public void Dispose() => Done.Dispose();
    }

    private sealed class Execution : IMessageSink, IDisposable
    {
        public ManualResetEvent Done { get; } = new(false);

        public string? Failed { get; private set; }

        public bool OnMessage(IMessageSinkMessage message)
        {
            if (message is ITestFailed failed)
            {
                Failed ??= failed.Test.DisplayName;
                Console.Error.WriteLine(string.Join('\n', failed.Messages));
            }

            if (message is IErrorMessage error) Failed ??= error.Messages.FirstOrDefault() ?? "error";
            if (message is ITestAssemblyFinished) Done.Set();
            return Failed is null;
        }

        public void Dispose() => Done.Dispose();
    }

    // One test at a time: other processes run other mutants.
    private sealed class Options : ITestFrameworkDiscoveryOptions, ITestFrameworkExecutionOptions
    {
        private readonly Dictionary<string, object?> values = new(StringComparer.Ordinal)
        {
            ["xunit.execution.DisableParallelization"] = true,
            ["xunit.execution.SynchronousMessageReporting"] = true,
        };

        public TValue GetValue<TValue>(string name) => values.TryGetValue(name, out object? value) ? (TValue)value! : default!;

        public void SetValue<TValue>(string name, TValue value) => values[name] = value;
    }
}
