using System.Text.Json;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>The days the shop has settled on, kept on this device too, so that a job stands on them without reception.</summary>
internal sealed class ShopDays(Server server, Cupboard cupboard)
{
    private const string Key = "settled";
    private bool isKnown;

    public SettledDaysDocument Settled { get; private set; } = new();

    /// <summary>The server's have come, and are others than those here.</summary>
    public event Action? Changed;

    public IReadOnlyList<VisitDocument> OfJob(string id) => [.. Settled.Visits.Where(v => v.Job == id)];

    public async Task Fetch()
    {
        await ReadHere();
        if (await server.SettledDays() is Reply<SettledDaysDocument>.Got(var settled, _)) await Take(settled);
    }

    /// <summary>Settles on the days found from this input; false: the server did not take them.</summary>
    public async Task<bool> Settle(string input)
    {
        if (await server.Settle(input) is not Reply<SettledDaysDocument>.Got(var settled, _)) return false;
        await Take(settled);
        return true;
    }

    public async Task ReadHere()
    {
        if (isKnown || await cupboard.Read(Drawer.Products, Key) is not [var kept]) return;
        try
        {
            var settled = JsonSerializer.Deserialize(kept, JobJson.Default.SettledDaysDocument) ?? new();
            // The server's may have come meanwhile.
            if (!isKnown) (isKnown, Settled) = (true, settled);
        }
        catch (JsonException)
        {
            // Kept by another version of this page: the server's come in their place.
        }
    }

    private async Task Take(SettledDaysDocument settled)
    {
        var isOther = !settled.Visits.SequenceEqual(Settled.Visits);
        (isKnown, Settled) = (true, settled);
        await cupboard.Write(Drawer.Products, Key, JsonSerializer.Serialize(settled, JobJson.Default.SettledDaysDocument));
        if (isOther) Changed?.Invoke();
    }
}
