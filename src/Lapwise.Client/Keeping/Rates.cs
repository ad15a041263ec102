using System.Text.Json;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>The shop's rates, kept on this device too, so that a price can be told without reception.</summary>
internal sealed class ShopRates(Server server, Cupboard cupboard)
{
    private const string Key = "rates";

    public RatesDocument Own { get; private set; } = new();

    /// <summary>Version in the store; null: none is kept there yet.</summary>
    public long? Version { get; private set; }

    public async Task Fetch()
    {
        if (await server.Rates() is Reply<RatesDocument>.Got(var rates, var version)) await Take(rates, version);
        else if (await cupboard.Read(Drawer.Products, Key) is [var kept]) Own = JsonSerializer.Deserialize(kept, JobJson.Default.RatesDocument) ?? Own;
    }

    /// <summary>False: the server did not take them, and nothing was changed there.</summary>
    public async Task<bool> Keep(RatesDocument rates)
    {
        if (await server.Save(rates, Version) is not Reply<RatesDocument>.Got(var kept, var version)) return false;
        await Take(kept, version);
        return true;
    }

    private async Task Take(RatesDocument rates, long version)
    {
        (Own, Version) = (rates, version > 0 ? version : null);
        await cupboard.Write(Drawer.Products, Key, JsonSerializer.Serialize(rates, JobJson.Default.RatesDocument));
    }
}
