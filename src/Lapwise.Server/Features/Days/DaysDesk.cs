using Lapwise.Core.Explain;

namespace Lapwise.Server.Features.Days;

/// <summary>The one search that goes on. The same input is not searched twice; another input takes the place of the one before.</summary>
internal sealed class DaysDesk(DaysInputs inputs, IHostApplicationLifetime server) : IDisposable
{
    private readonly Lock changing = new();
    private DaysSearch? search;

    public DaysSearch? Now
    {
        get { lock (changing) return search; }
    }

    public async Task<DaysSearch> Begin(Voice voice, bool isAfresh, CancellationToken cancel)
    {
        var input = await inputs.Now(isAfresh, cancel);
        lock (changing)
        {
            if (search is { } going && going.Input.Mark == input.Mark && going.Stands) return going;
            search?.Stop();
            return search = new DaysSearch(input, inputs, voice, server.ApplicationStopping);
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
