using Lapwise.Core.Explain;
using Lapwise.Server.Features.Jobs;

namespace Lapwise.Server.Features.Days;

/// <summary>The one search that goes on. The same input is not searched twice; another input takes the place of the one before.</summary>
internal sealed class DaysDesk(DaysInputs inputs, WorkedJobs worked, IHostApplicationLifetime server) : IDisposable
{
    private readonly Lock changing = new();
    private DaysSearch? search;

    public DaysSearch? Now
    {
        get { lock (changing) return search; }
    }

    /// <param name="isLonger">The same input is looked at for longer, where it ended with something left open.</param>
    public async Task<DaysSearch> Begin(Voice voice, bool isAfresh, bool isLonger, CancellationToken cancel)
    {
        var input = await inputs.Now(isAfresh, cancel);
        lock (changing)
        {
            var same = search is { } going && going.Input.Mark == input.Mark && going.Stands ? going : null;
            if (same is not null && !(isLonger && same.CanLookOn)) return same;
            search?.Stop();
            return search = new DaysSearch(input, inputs, worked, voice, server.ApplicationStopping, same);
        }
    }

    public void Dispose()
    {
        DaysSearch? last;
        lock (changing) last = search;
        last?.Stop();
        // The solver is native: it must have let go before the process is taken down.
        last?.Ended.Wait(TimeSpan.FromSeconds(5));
        last?.Dispose();
    }
}
