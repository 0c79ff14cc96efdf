using System.Security.Cryptography;
using System.Text;

namespace LureSim.Cli.Output;

/// <summary>
/// Lets one process at a time write into a folder: a mutex that the system knows by the folder's name and sets free when its holder dies.
/// Programs of other machines on a shared folder are not held off.
/// </summary>
internal sealed class FolderLock : IDisposable
{
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(100);

    private readonly Mutex mutex;

    private FolderLock(Mutex mutex) => this.mutex = mutex;

    /// <summary>Waits until nobody else writes into the folder.</summary>
    /// <param name="root">Full path of the folder.</param>
    /// <param name="cancellation">Ends the waiting.</param>
    /// <exception cref="OperationCanceledException">The waiting was ended.</exception>
    public static FolderLock Take(string root, CancellationToken cancellation)
    {
        // Two spellings of one folder are one folder where the system does not tell large from small letters.
        string name = OperatingSystem.IsLinux() ? root : root.ToUpperInvariant();
        var mutex = new Mutex(initiallyOwned: false, "luresim-" + Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(name)))[..32]);
        try
        {
            while (!mutex.WaitOne(Turn))
                cancellation.ThrowIfCancellationRequested();
        }
        catch (AbandonedMutexException)
        {
            // Its holder was killed: what it left behind is mended by who comes next, and that is this process.
        }
        catch
        {
            mutex.Dispose();
            throw;
        }

        return new FolderLock(mutex);
    }

    /// <summary>Lets the next in. Must be called by the thread that took it.</summary>
    public void Dispose()
    {
        mutex.ReleaseMutex();
        mutex.Dispose();
    }
}
