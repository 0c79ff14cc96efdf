namespace LureSim.Workbench.Pocket;

/// <summary>
/// Packs a table without loss. A cell is foretold from its neighbors along the axes, and what it misses is written by an adaptive binary range coder (Martin 1979; the
/// form of the coder, with its carry, is that of LZMA). The reader is some forty lines of plain script, in the page: nothing of the browser is asked for.
/// </summary>
internal static class PocketPacking
{
    // A chance is a number of 12 bits; it learns in large steps first. The two constants keep it away from certainty.
    private const int ChanceBits = 12, Even = 1 << (ChanceBits - 1);
    private const int Least = 32, Most = (1 << ChanceBits) - Least;
    private const uint Small = 1 << 24;
    private const int Contexts = 8 * 4 * 4;

    /// <summary>Packs a table.</summary>
    /// <param name="cells">Cells, head by head, nodes in the order of the axes, the last one fastest.</param>
    /// <param name="steps">Heads, and the steps of the three axes.</param>
    /// <param name="size">Bytes of a cell.</param>
    public static byte[] Pack(ReadOnlySpan<byte> cells, (int Heads, int A, int B, int C) steps, int size)
    {
        var walk = new Walk(steps, size);
        var model = new Model();
        var coder = new Encoder();
        byte[] all = cells.ToArray();
        for (int at = 0; at < all.Length; at++)
        {
            (int foretold, int context) = walk.Foretell(all, at);
            int missed = (sbyte)(all[at] - foretold);
            int folded = missed >= 0 ? 2 * missed : (-2 * missed) - 1;
            int node = 1;
            for (int bit = 7; bit >= 0; bit--)
            {
                int now = (folded >> bit) & 1;
                int place = (context << 8) | node;
                coder.Put(now, model.Chance(place));
                model.Learn(place, now);
                node = (2 * node) + now;
            }

            walk.Missed(folded);
        }

        return coder.Close();
    }

    /// <summary>Unpacks a table, as the page's script does.</summary>
    /// <param name="packed">What <see cref="Pack"/> made.</param>
    /// <param name="steps">Heads, and the steps of the three axes.</param>
    /// <param name="size">Bytes of a cell.</param>
    public static byte[] Unpack(ReadOnlySpan<byte> packed, (int Heads, int A, int B, int C) steps, int size)
    {
        var walk = new Walk(steps, size);
        var model = new Model();
        byte[] all = new byte[steps.Heads * steps.A * steps.B * steps.C * size];
        int next = 0;
        uint range = uint.MaxValue, code = 0;
        for (int i = 0; i < 5; i++) code = (code << 8) | packed[next++];
        for (int at = 0; at < all.Length; at++)
        {
            (int foretold, int context) = walk.Foretell(all, at);
            int node = 1;
            while (node < 256)
            {
                int place = (context << 8) | node;
                uint bound = (range >> ChanceBits) * (uint)model.Chance(place);
                int now = code < bound ? 0 : 1;
                if (now == 0) range = bound;
                else (code, range) = (code - bound, range - bound);
                if (range < Small) (range, code) = (range << 8, (code << 8) | (next < packed.Length ? packed[next++] : 0u));
                model.Learn(place, now);
                node = (2 * node) + now;
            }

            int folded = node - 256;
            all[at] = (byte)(foretold + ((folded & 1) == 0 ? folded / 2 : -(folded + 1) / 2));
            walk.Missed(folded);
        }

        return all;
    }

    // Chances of a zero, by context and by the bits of the number so far.
    private sealed class Model
    {
        private readonly int[] chances = [.. Enumerable.Repeat(Even, Contexts << 8)];
        private readonly int[] seen = new int[Contexts << 8];

        public int Chance(int place) => chances[place];

        public void Learn(int place, int bit)
        {
            int n = seen[place]++;
            int rate = n > 30 ? 5 : n > 12 ? 4 : n > 4 ? 3 : 2;
            int now = chances[place];
            now += bit == 0 ? ((1 << ChanceBits) - now) >> rate : -(now >> rate);
            chances[place] = Math.Clamp(now, Least, Most);
        }
    }

    // Goes through the cells and foretells each number.
    private sealed class Walk((int Heads, int A, int B, int C) steps, int size)
    {
        // Distance of the neighbor along each axis, the last axis first.
        private readonly int[] back = [size, size * steps.C, size * steps.C * steps.B];
        private readonly int[] counts = [steps.C, steps.B, steps.A];
        private readonly int head = size * steps.C * steps.B * steps.A;
        private int last;

        public void Missed(int folded) => last = folded;

        public (int Foretold, int Context) Foretell(byte[] all, int at)
        {
            int quantity = at % size;
            if (quantity == 0) last = 0;
            int sum = 0, planes = 0, ones = 0, low = 255, high = 0, nearest = -1;
            for (int a = 0; a < 3; a++)
            {
                if (at / back[a] % counts[a] == 0) continue;
                int one = all[at - back[a]];
                ones++;
                if (nearest < 0) nearest = one;
                (low, high) = (Math.Min(low, one), Math.Max(high, one));
                for (int b = a + 1; b < 3; b++)
                {
                    if (at / back[b] % counts[b] == 0) continue;
                    int plane = one + all[at - back[b]] - all[at - back[a] - back[b]];
                    (sum, planes, low, high) = (sum + plane, planes + 1, Math.Min(low, plane), Math.Max(high, plane));
                }
            }

            int foretold = planes > 0 ? Math.Clamp(sum / planes, 0, 255) : ones > 0 ? nearest : at >= head ? all[at - head] : 0;
            int spread = ones > 0 ? high - low : 9;
            int kind = Math.Min(quantity, PocketLayout.Path);
            return (foretold, (((kind * 4) + Step(spread)) * 4) + Step(last));
        }

        private static int Step(int number) => number == 0 ? 0 : number < 3 ? 1 : number < 8 ? 2 : 3;
    }

    // Writes the bits; a carry runs back through the bytes that wait.
    private sealed class Encoder
    {
        private readonly List<byte> written = [];
        private ulong low;
        private uint range = uint.MaxValue;
        private byte cache;
        private long waiting = 1;

        public void Put(int bit, int chance)
        {
            uint bound = (range >> ChanceBits) * (uint)chance;
            if (bit == 0) range = bound;
            else (low, range) = (low + bound, range - bound);
            if (range >= Small) return;
            range <<= 8;
            Shift();
        }

        public byte[] Close()
        {
            for (int i = 0; i < 5; i++) Shift();
            return [.. written];
        }

        private void Shift()
        {
            if (low < 0xFF000000 || low > uint.MaxValue)
            {
                byte carry = (byte)(low >> 32);
                for (byte next = cache; waiting > 0; waiting--, next = 0xFF) written.Add((byte)(next + carry));
                cache = (byte)(low >> 24);
            }

            waiting++;
            low = (low & 0x00FFFFFF) << 8;
        }
    }
}
