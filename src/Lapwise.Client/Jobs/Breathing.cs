using System.Diagnostics;

namespace Lapwise.Client.Jobs;

/// <summary>
/// Lets the browser draw and take taps in the middle of a long computation, and ends the computation when it is no longer
/// wanted. The page has one thread, so what does not pause freezes it.
/// </summary>
internal sealed class Breathing(CancellationToken stop)
{
    private static readonly TimeSpan Slice = TimeSpan.FromMilliseconds(12);
    private long since = Stopwatch.GetTimestamp();

    /// <summary>Gives way where the last pause lies more than a slice back.</summary>
    /// <exception cref="OperationCanceledException">No longer wanted.</exception>
    public async ValueTask Pause()
    {
        stop.ThrowIfCancellationRequested();
        if (Stopwatch.GetElapsedTime(since) >= Slice) await Rest();
    }

    /// <summary>Gives way now.</summary>
    /// <exception cref="OperationCanceledException">No longer wanted.</exception>
    public async ValueTask Rest()
    {
        stop.ThrowIfCancellationRequested();
        await GivingWay.Now();
        stop.ThrowIfCancellationRequested();
        since = Stopwatch.GetTimestamp();
    }
}
