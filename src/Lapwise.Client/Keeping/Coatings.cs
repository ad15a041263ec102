using System.Text.Json;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>The shop's coatings, kept on this device too, so that a job opens without reception.</summary>
internal sealed class Coatings(Server server, Cupboard cupboard)
{
    private const string Key = "all";

    public IReadOnlyList<ProductDocument> All { get; private set; } = [];

    /// <summary>The server's list has come.</summary>
    public event Action? Changed;

    /// <summary>What this device has, at once; then what the server has.</summary>
    public async Task Fetch()
    {
        await ReadHere();
        if (await server.Products() is Reply<IReadOnlyList<ProductDocument>>.Got(var products, _))
        {
            All = products;
            await cupboard.Write(Drawer.Products, Key, JsonSerializer.Serialize(products, JobJson.Default.IReadOnlyListProductDocument));
            Changed?.Invoke();
        }
    }

    public async Task ReadHere()
    {
        if (All.Count == 0) All = await Kept();
    }

    private async Task<IReadOnlyList<ProductDocument>> Kept()
    {
        try
        {
            return await cupboard.Read(Drawer.Products, Key) is [var kept] ? JsonSerializer.Deserialize(kept, JobJson.Default.IReadOnlyListProductDocument) ?? [] : [];
        }
        catch (JsonException)
        {
            return [];
        }
    }
}
