using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Lapwise.Core.Jobs;
using Lapwise.Files;
using Lapwise.Store;

namespace Lapwise.Server;

/// <summary>A new database is given the sample coatings and one sample job, so that there is something to look at.</summary>
internal static class FirstStart
{
    private static readonly string Samples = Path.Combine(AppContext.BaseDirectory, "samples");

    /// <summary>Does nothing where the database holds anything, or ever held a coating.</summary>
    public static async Task PutSamplesIn(IServiceProvider services, CancellationToken cancel)
    {
        var (jobs, products) = (services.GetRequiredService<JobShelf>(), services.GetRequiredService<ProductShelf>());
        if ((await products.List(cancel)).Count > 0 || (await jobs.List(cancel)).Count > 0) return;

        foreach (var file in Directory.EnumerateFiles(Path.Combine(Samples, "products"), "*.product.yaml").Order(StringComparer.Ordinal))
        {
            var product = await Read(file, JobJson.Default.ProductDocument, cancel);
            await products.Add(product.Id, product, cancel);
        }
        await jobs.Add("demo", await Read(Path.Combine(Samples, "l-kitchen.job.yaml"), JobJson.Default.JobDocument, cancel), cancel);
    }

    private static async Task<T> Read<T>(string file, JsonTypeInfo<T> json, CancellationToken cancel)
    {
        var read = YamlText.ToJson(await File.ReadAllTextAsync(file, cancel));
        return JsonSerializer.Deserialize(read.Json ?? throw new InvalidDataException(file), json)!;
    }
}
