using Lapwise.Core.Work;

namespace Lapwise.Client.Jobs;

/// <summary>A search for a better order of one coat, going on behind the plan on show or ended.</summary>
/// <param name="Coat">Place of the coat in the system, from 0.</param>
/// <param name="Before">The coat's plan when the search began.</param>
/// <param name="Times">Multiple of the usual number of steps it is at.</param>
internal sealed record FurtherSearch(int Coat, CoatWork Before, int Times, bool IsRunning)
{
    /// <summary>Short searches first, so that what is easily found is soon seen.</summary>
    public static readonly int[] Efforts = [4, 12, 40];

    /// <summary>Ended by hand, before its steps were used up.</summary>
    public bool IsStopped { get; init; }

    /// <summary>It works where the other does not, has a younger worst lap, or as young a one of which more is proven.</summary>
    public static bool IsBetter(CoatWork found, CoatWork other) => Standing(found).CompareTo(Standing(other)) > 0;

    private static (bool, long, long) Standing(CoatWork work) => (work.Holds, work.LapMarginMs, work.Proof.BoundMs);
}
