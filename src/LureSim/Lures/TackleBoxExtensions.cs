using LureSim.Model;

namespace LureSim.Lures;

/// <summary>The lures of a tackle box.</summary>
public static class TackleBoxExtensions
{
    extension(TackleBox tackle)
    {
        /// <summary>What the plan compares: the first soft body on every jig head, then every body that needs none.</summary>
        public IReadOnlyList<(JigHead Head, LureBody Body)> Lures => tackle.LuresWith(tackle.Bodies.FirstOrDefault(body => body.NeedsHead));

        /// <summary>A soft body on every jig head, then every body that needs no head.</summary>
        /// <param name="soft">The soft body; null for none.</param>
        public IReadOnlyList<(JigHead Head, LureBody Body)> LuresWith(LureBody? soft) =>
        [
            .. soft is null ? [] : tackle.JigHeads.Select(head => (head, soft)),
            .. tackle.Bodies.Where(body => !body.NeedsHead).Select(body => (JigHead.None(body), body)),
        ];
    }
}
