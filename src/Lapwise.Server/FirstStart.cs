using Lapwise.Core.Explain;
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

        foreach (var product in DocumentFile.ReadProducts(Path.Combine(Samples, "products")).Products)
            await products.Add(product.Id, product, cancel);
        var demo = DocumentFile.ReadJob(await File.ReadAllTextAsync(Path.Combine(Samples, "l-kitchen.job.yaml"), cancel));
        await jobs.Add("demo", demo.Document ?? throw new InvalidDataException(demo.Faults[0].Say(Voice.Default)), cancel);
    }
}
