using System.Globalization;
using System.Net;
using System.Text.Json;
using Lapwise.Core.Jobs;
using Lapwise.Core.Shop;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Shelf;

public sealed class PurchaseForJobsTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task The_list_for_the_shop_comes_on_paper_and_as_a_page()
    {
        var paper = await server.Send(HttpMethod.Get, "/api/purchase/list.pdf?job=demo&language=es&units=metric&chance=0.9");
        Assert.Equal("application/pdf", paper.Content.Headers.ContentType!.MediaType);
        Assert.Equal("%PDF-"u8.ToArray(), (await paper.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken))[..5]);

        var page = await server.Send(HttpMethod.Get, "/api/purchase/list?job=demo&language=es&units=metric&chance=0.9");
        var text = WebUtility.HtmlDecode(await Text(page));
        Assert.Equal("text/html", page.Content.Headers.ContentType!.MediaType);
        Assert.Contains("Lista de compra", text, StringComparison.Ordinal);
        Assert.Contains("90\u00a0%", text, StringComparison.Ordinal);
    }

    [Theory, InlineData("/api/purchase"), InlineData("/api/purchase/list"), InlineData("/api/purchase/list.pdf")]
    public async Task A_chance_that_cannot_be_asked_for_is_refused(string address) =>
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await server.Send(HttpMethod.Get, address + "?chance=2")).StatusCode);

    /// <summary>As of a job taken in from another shop: the coating is in its document only.</summary>
    [Fact]
    public async Task A_coating_that_only_the_job_itself_knows_is_bought_too()
    {
        var demo = JsonSerializer.Deserialize(await Text(await server.Send(HttpMethod.Get, "/api/jobs/demo")), JobJson.Default.JobDocument)!;
        var products = JsonSerializer.Deserialize(await Text(await server.Send(HttpMethod.Get, "/api/products")), JobJson.Default.IReadOnlyListProductDocument)!;
        var own = products.First(p => p.Id == demo.System[0].Product) with { Id = "from-elsewhere", Name = "Clear from elsewhere" };
        var job = demo with { Products = [own], System = [demo.System[0] with { Product = own.Id }] };
        await server.Send(HttpMethod.Put, "/api/jobs/taken-in", Json(job), ifNone: true);
        Assert.Contains("Clear from elsewhere", await Text(await server.Send(HttpMethod.Get, "/api/purchase?job=taken-in")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_with_something_that_cannot_be_used_is_named_on_the_list()
    {
        var demo = JsonSerializer.Deserialize(await Text(await server.Send(HttpMethod.Get, "/api/jobs/demo")), JobJson.Default.JobDocument)!;
        var asWas = await Text(await server.Send(HttpMethod.Get, "/api/purchase/list?job=demo"));
        await server.Send(HttpMethod.Put, "/api/jobs/half-typed", Json(demo with { Name = "Half typed", System = [demo.System[0] with { Product = "not-there" }] }), ifNone: true);
        var list = await Text(await server.Send(HttpMethod.Get, "/api/purchase/list?job=half-typed"));
        Assert.Contains("Half typed: something entered cannot be used yet", list, StringComparison.Ordinal);
        Assert.DoesNotContain("cannot be used yet", asWas, StringComparison.Ordinal);
        var answer = JsonDocument.Parse(await Text(await server.Send(HttpMethod.Get, "/api/purchase?job=half-typed"))).RootElement;
        Assert.Equal("Half typed", Assert.Single(answer.GetProperty("incomplete").EnumerateArray()).GetString());
    }

    [Fact]
    public async Task What_is_done_or_past_is_not_bought_for_and_what_is_past_is_named()
    {
        await using var shop = await OnNewDatabase();
        var today = DateOnly.FromDateTime(DateTime.Now);
        await Put(shop, "coming", today.AddDays(9));
        await Put(shop, "gone", today.AddDays(-60));
        await Put(shop, "undated", null);
        await shop.Send(HttpMethod.Put, "/api/days", """{"jobs":[{"job":"demo","leaveOut":true}]}""", ifNone: true);

        Assert.Equal(["coming", "undated"], await Bought(""));
        var note = Assert.Single((await Purchase(shop, "")).GetProperty("notes").EnumerateArray());
        Assert.Equal("DayIsPast", note.GetProperty("code").GetString());
        Assert.Contains("gone", note.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.DoesNotContain("coming", note.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Contains("whose day is past", await Text(await shop.Send(HttpMethod.Get, "/api/purchase/list")), StringComparison.Ordinal);
        // Asked for by its name it counts.
        Assert.Equal(["gone"], await Bought("?job=gone"));

        async Task<IReadOnlyList<string>> Bought(string query)
        {
            var page = await Text(await shop.Send(HttpMethod.Get, "/api/purchase/list" + query));
            return [.. new[] { "coming", "gone", "undated", "demo" }.Where(id => page.Contains($"<td>{id}</td>", StringComparison.Ordinal))];
        }
    }

    [Fact]
    public async Task A_job_changed_after_its_days_were_settled_is_named()
    {
        await using var shop = await OnNewDatabase();
        await Put(shop, "changed", DateOnly.FromDateTime(DateTime.Now).AddDays(9));
        var first = DateOnly.FromDateTime(DateTime.Now).AddDays(20);
        var taken = $$$"""{"lapwise":1,"settled":{"times":1,"visits":[{"job":"changed","name":"changed","number":1,"from":"{{{first:yyyy-MM-dd}}}T08:00","lengthMin":60,"by":"crew","isCoat":true,"coat":1,"en":"coat 1","es":"capa 1"}]}}""";
        var plan = (await Body(await shop.Send(HttpMethod.Post, "/api/import", taken))).GetProperty("plan").GetString();
        await shop.Send(HttpMethod.Post, "/api/import?plan=" + plan, taken);

        var note = Assert.Single((await Purchase(shop, "?job=changed")).GetProperty("notes").EnumerateArray());
        Assert.Equal("SettledDaysOutOfDate", note.GetProperty("code").GetString());
        Assert.Contains("changed", note.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_very_many_jobs_it_is_said_that_their_order_of_work_does_not_count()
    {
        await using var shop = await OnNewDatabase();
        var demo = JsonSerializer.Deserialize(await Text(await shop.Send(HttpMethod.Get, "/api/jobs/demo")), JobJson.Default.JobDocument)!;
        var text = JsonSerializer.Serialize(new ShopDocument { Jobs = [.. Enumerable.Range(0, 101).Select(i => new KeptJobDocument { Id = $"j{i}", Job = demo with { Name = $"Job {i}" } })] }, ShopJson.Default.ShopDocument);
        var plan = (await Body(await shop.Send(HttpMethod.Post, "/api/import", text))).GetProperty("plan").GetString();
        await shop.Send(HttpMethod.Post, "/api/import?plan=" + plan, text);
        Assert.Contains((await Purchase(shop, "")).GetProperty("notes").EnumerateArray(), n => n.GetProperty("code").GetString() == "OrderOfWorkNotCounted");
    }

    private static async Task Put(RunningServer shop, string id, DateOnly? start)
    {
        var demo = JsonSerializer.Deserialize(await Text(await shop.Send(HttpMethod.Get, "/api/jobs/demo")), JobJson.Default.JobDocument)!;
        var timeline = (demo.Timeline ?? new TimelineDocument()) with { Start = start?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) };
        await shop.Send(HttpMethod.Put, $"/api/jobs/{id}", Json(demo with { Name = id, Timeline = timeline }), ifNone: true);
    }

    private static async Task<JsonElement> Purchase(RunningServer shop, string query) => await Body(await shop.Send(HttpMethod.Get, "/api/purchase" + query));

    private static Task<string> Text(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
}
