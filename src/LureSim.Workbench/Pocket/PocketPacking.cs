using System.IO.Compression;

namespace LureSim.Workbench.Pocket;

/// <summary>
/// Packs a table without loss: what each number misses of what its neighbors along the axes foretell, one quantity after the other, deflated. The page's script inflates it by what the
/// browser has for that and adds up again.
/// </summary>
internal static class PocketPacking
{
    /// <summary>Packs a table.</summary>
    /// <param name="cells">Cells, head by head, nodes in the order of the axes, the last one fastest.</param>
    /// <param name="steps">Heads, and the steps of the three axes.</param>
    /// <param name="size">Bytes of a cell.</param>
    public static byte[] Pack(ReadOnlySpan<byte> cells, (int Heads, int A, int B, int C) steps, int size)
    {
        byte[] all = cells.ToArray(), missed = new byte[all.Length];
        for (int at = 0; at < all.Length; at++) missed[PlaceOf(at, all.Length, size)] = (byte)(all[at] - Foretold(all, at, steps, size));
        using var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.SmallestSize)) deflate.Write(missed);
        return packed.ToArray();
    }

    /// <summary>Unpacks a table, as the page's script does.</summary>
    /// <param name="packed">What <see cref="Pack"/> made.</param>
    /// <param name="steps">Heads, and the steps of the three axes.</param>
    /// <param name="size">Bytes of a cell.</param>
    /// <exception cref="EndOfStreamException">There is less than a whole table.</exception>
    public static byte[] Unpack(byte[] packed, (int Heads, int A, int B, int C) steps, int size)
    {
        byte[] all = new byte[steps.Heads * steps.A * steps.B * steps.C * size], missed = new byte[all.Length];
        using (var inflate = new DeflateStream(new MemoryStream(packed), CompressionMode.Decompress)) inflate.ReadExactly(missed);
        for (int at = 0; at < all.Length; at++) all[at] = (byte)(missed[PlaceOf(at, all.Length, size)] + Foretold(all, at, steps, size));
        return all;
    }

    // Numbers of one quantity stand together: they are alike.
    private static int PlaceOf(int at, int length, int size) => (at % size * (length / size)) + (at / size);

    // The mean of the planes through three neighbors; the neighbor on the first edge of an axis, the head before for the first node.
    private static int Foretold(byte[] all, int at, (int Heads, int A, int B, int C) steps, int size)
    {
        ReadOnlySpan<int> back = [size, size * steps.C, size * steps.C * steps.B], counts = [steps.C, steps.B, steps.A];
        int head = back[2] * steps.A, sum = 0, planes = 0, nearest = -1;
        for (int a = 0; a < 3; a++)
        {
            if (at / back[a] % counts[a] == 0) continue;
            int one = all[at - back[a]];
            if (nearest < 0) nearest = one;
            for (int b = a + 1; b < 3; b++)
            {
                if (at / back[b] % counts[b] == 0) continue;
                sum += one + all[at - back[b]] - all[at - back[a] - back[b]];
                planes++;
            }
        }

        return planes > 0 ? Math.Clamp(sum / planes, 0, 255) : nearest >= 0 ? nearest : at >= head ? all[at - head] : 0;
    }
}
