using System.Text.Json;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>The shop's coatings, kept on this device too, so that a job opens without reception.</summary>
internal sealed class Coatings(Server server, Device device)
{
    private const string Key = "lapwise/products";

    public IReadOnlyList<ProductDocument> All { get; private set; } = [];

    public async Task Fetch()
    {
        if (await server.Products() is Reply<IReadOnlyList<ProductDocument>>.Got(var products, _))
        {
            All = products;
            device.Write(Key, JsonSerializer.Serialize(products, JobJson.Default.IReadOnlyListProductDocument));
        }
        else if (All.Count == 0)
        {
            All = Kept();
        }
    }

    private IReadOnlyList<ProductDocument> Kept()
    {
        try
        {
            return device.Read(Key) is { } kept ? JsonSerializer.Deserialize(kept, JobJson.Default.IReadOnlyListProductDocument) ?? [] : [];
        }
        catch (JsonException)
        {
            return [];
        }
    }
}
