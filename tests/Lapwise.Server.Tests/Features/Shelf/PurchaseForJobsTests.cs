using System.Net;
using System.Text.Json;
using Lapwise.Core.Jobs;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Shelf;

public sealed class PurchaseForJobsTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task The_list_for_the_shop_comes_on_paper_and_as_a_page()
    {
        var paper = await server.Send(HttpMethod.Get, "/api/purchase/list.pdf?language=es&units=metric&chance=0.9");
        Assert.Equal("application/pdf", paper.Content.Headers.ContentType!.MediaType);
        Assert.Equal("%PDF-"u8.ToArray(), (await paper.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken))[..5]);

        var page = await server.Send(HttpMethod.Get, "/api/purchase/list?language=es&units=metric&chance=0.9");
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

    private static Task<string> Text(HttpResponseMessage answer) => answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
}
