using System.Text.Json;
using System.Text.Json.Nodes;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Files;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server;

/// <summary>
/// A new database is given the sample coatings and one sample job, so that there is something to look at, in the language of whoever
/// asks first. From then on they are documents like any other.
/// </summary>
internal sealed class FirstStart(JobShelf jobs, ProductShelf products) : IDisposable
{
    private static readonly string Samples = Path.Combine(AppContext.BaseDirectory, "samples");
    private readonly SemaphoreSlim one = new(1);
    private volatile bool isDone;

    public async Task BeforeFirstAnswer(HttpContext http, RequestDelegate next)
    {
        if (!isDone && http.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)) await PutSamplesIn(Voices.Of(http.Request));
        await next(http);
    }

    public void Dispose() => one.Dispose();

    /// <summary>Does nothing where the database holds anything, or ever held a coating. Once begun it is not broken off.</summary>
    private async Task PutSamplesIn(Voice voice)
    {
        await one.WaitAsync();
        try
        {
            if (!isDone && (await products.List(default)).Count == 0 && (await jobs.List(default)).Count == 0) await PutIn(WordsIn(voice));
            isDone = true;
        }
        finally
        {
            one.Release();
        }
    }

    private async Task PutIn(IReadOnlyDictionary<string, string> words)
    {
        foreach (var product in DocumentFile.ReadProducts(Path.Combine(Samples, "products")).Products)
            await products.Add(product.Id, Needed(JobFile.ReadProduct(Retold(JobFile.Write(product), words))), default);
        var demo = Needed(DocumentFile.ReadJob(await File.ReadAllTextAsync(Path.Combine(Samples, "l-kitchen.job.yaml"))));
        await jobs.Add("demo", Needed(JobFile.ReadJob(Retold(JobFile.Write(demo), words))), default);
    }

    /// <summary>The samples are written in English; what they say in another language stands beside them.</summary>
    private static IReadOnlyDictionary<string, string> WordsIn(Voice voice) => voice.Language == Language.English
        ? new Dictionary<string, string>()
        : JsonSerializer.Deserialize<Dictionary<string, string>>(DocumentText.JsonOf(File.ReadAllText(Path.Combine(Samples, "es.words.yaml"))).Json!)!;

    private static string Retold(string json, IReadOnlyDictionary<string, string> words)
    {
        var root = JsonNode.Parse(json)!;
        Retell(root, words);
        return root.ToJsonString();
    }

    private static void Retell(JsonNode node, IReadOnlyDictionary<string, string> words)
    {
        foreach (var child in node is JsonObject o ? [.. o.Select(p => p.Value)] : node is JsonArray a ? [.. a] : (IReadOnlyList<JsonNode?>)[])
        {
            if (child is JsonValue value && value.TryGetValue<string>(out var said) && words.TryGetValue(said, out var retold)) value.ReplaceWith(retold);
            else if (child is not null) Retell(child, words);
        }
    }

    private static T Needed<T>(FileRead<T> read) where T : class => read.Document ?? throw new InvalidDataException(read.Faults[0].Say(Voice.Default));
}
