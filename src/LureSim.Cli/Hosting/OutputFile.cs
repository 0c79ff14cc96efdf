using System.Text;

namespace LureSim.Cli.Hosting;

/// <summary>A file to write: its name relative to the folder, with "/" between parts, and its content.</summary>
internal sealed record OutputFile(string Name, ReadOnlyMemory<byte> Content)
{
    /// <summary>A text file in UTF-8 without a byte order mark.</summary>
    public static OutputFile Text(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));
}
