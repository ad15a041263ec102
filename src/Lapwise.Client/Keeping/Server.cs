using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Lapwise.Client.Voices;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;

using Lapwise.Core.OnSite;
using Lapwise.Wire;

namespace Lapwise.Client.Keeping;

/// <summary>Asks the server; every failure is an answer.</summary>
internal sealed class Server(HttpClient http, Spoken spoken)
{
    private static readonly string Own = typeof(Server).Assembly.GetName().Version!.ToString(3);

    /// <summary>The server runs another version than this page: a reload brings the new page.</summary>
    public bool IsOtherVersion { get; private set; }

    public event Action? VersionSeen;

    public Task<Reply<IReadOnlyList<JobLine>>> Jobs() => Ask(HttpMethod.Get, "api/jobs", null, null, WireJson.Default.IReadOnlyListJobLine);

    public Task<Reply<IReadOnlyList<ProductDocument>>> Products() => Ask(HttpMethod.Get, "api/products", null, null, JobJson.Default.IReadOnlyListProductDocument);

    public Task<Reply<JobDocument>> Job(string id) => Ask(HttpMethod.Get, JobAt(id), null, null, JobJson.Default.JobDocument);

    /// <summary>Saves a job made from <paramref name="from"/>; null: a new one.</summary>
    public Task<Reply<JobDocument>> Save(string id, JobDocument job, long? from) =>
        Ask(HttpMethod.Put, JobAt(id), JsonSerializer.Serialize(job, JobJson.Default.JobDocument), from ?? 0, JobJson.Default.JobDocument);

    public Task<Reply<JobDocument>> Remove(string id, long from) => Ask(HttpMethod.Delete, JobAt(id), null, from, JobJson.Default.JobDocument);

    public Task<Reply<ProductDocument>> Product(string id) => Ask(HttpMethod.Get, ProductAt(id), null, null, JobJson.Default.ProductDocument);

    /// <summary>Saves a coating made from <paramref name="from"/>; null: a new one.</summary>
    public Task<Reply<ProductDocument>> Save(ProductDocument product, long? from) =>
        Ask(HttpMethod.Put, ProductAt(product.Id), JobFile.Write(product), from ?? 0, JobJson.Default.ProductDocument);

    public Task<Reply<ProductDocument>> RemoveProduct(string id, long from) => Ask(HttpMethod.Delete, ProductAt(id), null, from, JobJson.Default.ProductDocument);

    public Task<Reply<PhonesLine>> Phones() => Ask(HttpMethod.Get, "api/phones", null, null, WireJson.Default.PhonesLine);

    public Task<Reply<PhonesLine>> OpenDoor() => Ask(HttpMethod.Put, "api/phones/door", null, null, WireJson.Default.PhonesLine);

    public Task<Reply<PhonesLine>> CloseDoor() => Ask(HttpMethod.Delete, "api/phones/door", null, null, WireJson.Default.PhonesLine);

    public Task<Reply<PhonesLine>> ShowCode() => Ask(HttpMethod.Post, "api/phones/code", null, null, WireJson.Default.PhonesLine);

    public Task<Reply<PhonesLine>> RemovePhone(string id) => Ask(HttpMethod.Delete, "api/phones/" + Uri.EscapeDataString(id), null, null, WireJson.Default.PhonesLine);

    private static string ProductAt(string id) => "api/products/" + Uri.EscapeDataString(id);
    public Task<Reply<RatesDocument>> Rates() => Ask(HttpMethod.Get, "api/rates", null, null, JobJson.Default.RatesDocument);

    public Task<Reply<RatesDocument>> Save(RatesDocument rates, long? from) =>
        Ask(HttpMethod.Put, "api/rates", JsonSerializer.Serialize(rates, JobJson.Default.RatesDocument), from ?? 0, JobJson.Default.RatesDocument);

    public Task<Reply<ShelfDocument>> Shelf() => Ask(HttpMethod.Get, "api/shelf", null, null, JobJson.Default.ShelfDocument);

    public Task<Reply<ShelfDocument>> Append(IReadOnlyList<ShelfEntryDocument> entries) =>
        Ask(HttpMethod.Post, "api/shelf/entries", JsonSerializer.Serialize(entries, JobJson.Default.IReadOnlyListShelfEntryDocument), null, JobJson.Default.ShelfDocument);

    /// <summary>Saves what is to be kept, made from <paramref name="from"/>; 0: nothing was said before.</summary>
    public Task<Reply<ShelfDocument>> Keep(IReadOnlyList<KeepDocument> keep, long from) =>
        Ask(HttpMethod.Put, "api/shelf/keep", JsonSerializer.Serialize(new ShelfDocument { Keep = keep }, JobJson.Default.ShelfDocument), from, JobJson.Default.ShelfDocument);

    public Task<Reply<PurchaseAnswer>> Purchase(string chance, string units) =>
        Ask(HttpMethod.Get, $"api/purchase?chance={Uri.EscapeDataString(chance)}&units={units}", null, null, AnswerJson.Default.PurchaseAnswer);

    /// <summary>Tells what taking in a file would change; with the mark of what was told, changes it.</summary>
    /// <param name="where"><c>import</c>, <c>import/prices</c> or <c>import/shelf</c>.</param>
    public Task<Reply<TakingLine>> TakeIn(string where, string text, string plan) =>
        Ask(HttpMethod.Post, $"api/{where}?plan={Uri.EscapeDataString(plan)}", text, null, WireJson.Default.TakingLine);

    public Task<Reply<DaysDocument>> Days() => Ask(HttpMethod.Get, "api/days", null, null, JobJson.Default.DaysDocument);

    public Task<Reply<DaysDocument>> Save(DaysDocument days, long? from) =>
        Ask(HttpMethod.Put, "api/days", JsonSerializer.Serialize(days, JobJson.Default.DaysDocument), from ?? 0, JobJson.Default.DaysDocument);

    public Task<Reply<SettledDaysDocument>> SettledDays() => Ask(HttpMethod.Get, "api/days/settled", null, null, JobJson.Default.SettledDaysDocument);

    /// <summary>Settles on the days found from this input.</summary>
    public Task<Reply<SettledDaysDocument>> Settle(string input) => Ask(HttpMethod.Put, "api/days/settled?input=" + Uri.EscapeDataString(input), null, null, JobJson.Default.SettledDaysDocument);

    /// <param name="method">POST begins, GET looks, DELETE stops.</param>
    public Task<Reply<DaysAnswer>> SearchDays(HttpMethod method, string units, bool isAfresh = false, bool isLonger = false) => Ask(method, $"api/days/search?units={units}{(isAfresh ? "&afresh" : "")}{(isLonger ? "&longer" : "")}", null, null, DaysJson.Default.DaysAnswer);

    /// <param name="method">GET looks, POST makes a new address, DELETE takes it back.</param>
    public Task<Reply<FeedAnswer>> Feed(HttpMethod method, string units) => Ask(method, "api/days/feed?units=" + units, null, null, DaysJson.Default.FeedAnswer);

    public Task<Reply<IReadOnlyList<IssuedQuote>>> Quotes(string jobId) => Ask(HttpMethod.Get, JobAt(jobId) + "/quotes", null, null, QuoteJson.Default.IReadOnlyListIssuedQuote);

    public Task<Reply<IssuedQuote>> Issue(string jobId, string units) => Ask(HttpMethod.Post, $"{JobAt(jobId)}/quotes?units={units}", null, null, QuoteJson.Default.IssuedQuote);

    public Task<Reply<IReadOnlyList<QuoteDifference>>> Differences(string quoteId) =>
        Ask(HttpMethod.Get, $"api/quotes/{Uri.EscapeDataString(quoteId)}/differences", null, null, QuoteJson.Default.IReadOnlyListQuoteDifference);

    public Task<Reply<IReadOnlyList<RunLine>>> Runs(string job) => Ask(HttpMethod.Get, JobAt(job) + "/runs", null, null, RunJson.Default.IReadOnlyListRunLine);

    /// <summary>Sends marks and fetches those that came in after a place.</summary>
    public Task<Reply<MarksAnswer>> Marks(string job, string run, IReadOnlyList<MarkDocument> marks, long after) =>
        Ask(HttpMethod.Post, string.Create(CultureInfo.InvariantCulture, $"{JobAt(job)}/runs/{Uri.EscapeDataString(run)}/marks?after={after}"),
            JsonSerializer.Serialize(marks, RunJson.Default.IReadOnlyListMarkDocument), null, RunJson.Default.MarksAnswer);

    private static string JobAt(string id) => "api/jobs/" + Uri.EscapeDataString(id);

    /// <param name="version">Version the change is made from; 0: there is none yet; null: nothing is changed.</param>
    private async Task<Reply<T>> Ask<T>(HttpMethod method, string address, string? body, long? version, JsonTypeInfo<T> json)
    {
        using var request = new HttpRequestMessage(method, address);
        if (body is not null) request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        if (version == 0) request.Headers.IfNoneMatch.Add(EntityTagHeaderValue.Any);
        if (version > 0) request.Headers.IfMatch.Add(new EntityTagHeaderValue($"\"{version.Value.ToString(CultureInfo.InvariantCulture)}\""));
        request.Headers.AcceptLanguage.ParseAdd(spoken.Voice.Language == Language.Spanish ? "es" : "en");
        request.Headers.Add(WireHeaders.ProgramVersion, Own);
        try
        {
            using var answer = await http.SendAsync(request);
            Notice(answer);
            var text = await answer.Content.ReadAsStringAsync();
            return answer.StatusCode switch
            {
                HttpStatusCode.OK or HttpStatusCode.Created => Understood(text, json, VersionOf(answer)),
                HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden => new Reply<T>.NotLetIn(),
                HttpStatusCode.PreconditionFailed => new Reply<T>.Clash(),
                HttpStatusCode.NotFound => new Reply<T>.Missing(),
                >= HttpStatusCode.InternalServerError => new Reply<T>.Unreachable(),
                _ => new Reply<T>.Refused(ProblemIn(text, (int)answer.StatusCode)),
            };
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException or JsonException)
        {
            // A half answer is no answer: what was to be saved is still on this device.
            return new Reply<T>.Unreachable();
        }
    }

    private static Reply<T> Understood<T>(string text, JsonTypeInfo<T> json, long version)
    {
        try
        {
            return new Reply<T>.Got(JsonSerializer.Deserialize(text, json)!, version);
        }
        catch (JsonException)
        {
            // A half answer is not even JSON, and ends in the other catch.
            JsonDocument.Parse(text).Dispose();
            return new Reply<T>.Newer(text);
        }
    }

    private void Notice(HttpResponseMessage answer)
    {
        var other = answer.Headers.TryGetValues(WireHeaders.ProgramVersion, out var said) && said.First() != Own;
        if (other == IsOtherVersion) return;
        IsOtherVersion = other;
        VersionSeen?.Invoke();
    }

    private static long VersionOf(HttpResponseMessage answer) =>
        long.TryParse(answer.Headers.ETag?.Tag.Trim('"'), NumberStyles.None, CultureInfo.InvariantCulture, out var version) ? version : 0;

    private static Problem ProblemIn(string text, int status)
    {
        try
        {
            return JsonSerializer.Deserialize(text, WireJson.Default.Problem) ?? new Problem(null, null, status, null, null);
        }
        catch (JsonException)
        {
            return new Problem(null, null, status, null, null);
        }
    }
}
