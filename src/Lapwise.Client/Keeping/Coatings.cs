using System.Text.Json;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>The shop's coatings, kept on this device too, so that a job opens without reception.</summary>
internal sealed class Coatings(Server server, Cupboard cupboard)
{
    private const string Key = "all";
    private string known = "";

    public IReadOnlyList<ProductDocument> All { get; private set; } = [];

    /// <summary>The server's list has come, and is another than the one here.</summary>
    public event Action? Changed;

    /// <summary>What this device has, at once; then what the server has.</summary>
    public async Task Fetch()
    {
        await ReadHere();
        if (await server.Products() is not Reply<IReadOnlyList<ProductDocument>>.Got(var products, _)) return;
        var json = JsonSerializer.Serialize(products, JobJson.Default.IReadOnlyListProductDocument);
        var isOther = json != known;
        if (isOther) (known, All) = (json, products);
        // Also where it is the same: the browser may have cleared it.
        await cupboard.Write(Drawer.Products, Key, json);
        if (isOther) Changed?.Invoke();
    }

    public async Task ReadHere()
    {
        if (known.Length > 0 || await cupboard.Read(Drawer.Products, Key) is not [var kept]) return;
        try
        {
            var products = JsonSerializer.Deserialize(kept, JobJson.Default.IReadOnlyListProductDocument) ?? [];
            // The server's may have come meanwhile.
            if (known.Length == 0) (known, All) = (kept, products);
        }
        catch (JsonException)
        {
            // Kept by another version of this page: the server's comes in its place.
        }
    }
}
