using System.Net;
using System.Text;
using System.Text.Json;
using Lapwise.Core.Jobs;
using Lapwise.Core.Shop;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.InAndOut;

public sealed class InAndOutTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static async Task<JsonElement> Post(RunningServer server, string address, string text, string type = "application/json")
    {
        using var content = new StringContent(text, Encoding.UTF8, type);
        return await Body(await server.Http.PostAsync(address, content, Stop));
    }

    [Fact]
    public async Task What_goes_out_comes_in_elsewhere_to_the_last_value()
    {
        await using var from = await OnNewDatabase();
        await using var to = await OnNewDatabase();
        await from.Send(HttpMethod.Post, "/api/shelf/entries", """[{"id":"r1","on":"2026-11-20","kind":"received","pack":"C7","product":"clear-fast-two-part","lot":"L7","size":"24 fl oz"}]""");
        await from.Send(HttpMethod.Put, "/api/rates", """{"margin":"31 %"}""", ifNone: true);
        await from.Send(HttpMethod.Put, "/api/shelf/keep", """{"lapwise":1,"keep":[{"product":"clear-fast-two-part","least":"1 qt"}]}""", ifNone: true);
        var demo = JsonSerializer.Deserialize(await from.Http.GetStringAsync("/api/jobs/demo", Stop), JobJson.Default.JobDocument)!;
        await from.Send(HttpMethod.Put, "/api/jobs/other", Json(demo with { Name = "Other = kitchen" }), ifNone: true);

        await from.Send(HttpMethod.Post, "/api/jobs/demo/quotes");
        await from.Send(HttpMethod.Post, "/api/jobs/other/quotes");

        var export = await from.Http.GetStringAsync("/api/export", Stop);
        var told = await Post(to, "/api/import", export);
        Assert.False(told.GetProperty("isDone").GetBoolean());
        Assert.Equal(6, told.GetProperty("new").GetInt32()); // job, entry, level to keep, rates, two quotes
        Assert.Equal(HttpStatusCode.NotFound, (await to.Send(HttpMethod.Get, "/api/jobs/other")).StatusCode); // told, not done

        var done = await Post(to, "/api/import?plan=" + told.GetProperty("plan").GetString(), export);
        Assert.True(done.GetProperty("isDone").GetBoolean());
        Assert.Equal(export, await to.Http.GetStringAsync("/api/export", Stop));
    }

    [Fact]
    public async Task Where_the_shop_changed_after_it_was_told_it_is_told_anew_and_nothing_is_done()
    {
        await using var server = await OnNewDatabase();
        var export = (await server.Http.GetStringAsync("/api/export", Stop)).Replace("Larkhollow house", "Larkhollow barn", StringComparison.Ordinal);
        var told = await Post(server, "/api/import", export);
        Assert.Equal("changed", told.GetProperty("steps")[0].GetProperty("what").GetString());
        Assert.Contains("barn", told.GetProperty("steps")[0].GetProperty("differences")[0].GetProperty("after").GetString());

        var read = await server.Send(HttpMethod.Get, "/api/jobs/demo");
        var demo = JsonSerializer.Deserialize(await read.Content.ReadAsStringAsync(Stop), JobJson.Default.JobDocument)!;
        await server.Send(HttpMethod.Put, "/api/jobs/demo", Json(demo with { Name = "Changed meanwhile" }), ifMatch: VersionOf(read));
        Assert.False((await Post(server, "/api/import?plan=" + told.GetProperty("plan").GetString(), export)).GetProperty("isDone").GetBoolean());
        Assert.Contains("Changed meanwhile", await server.Http.GetStringAsync("/api/jobs/demo", Stop));
    }

    [Fact]
    public async Task A_quote_given_out_is_never_written_over_and_the_next_number_comes_after_all()
    {
        await using var server = await OnNewDatabase();
        var quote = await Body(await server.Send(HttpMethod.Post, "/api/jobs/demo/quotes"));
        var export = await server.Http.GetStringAsync("/api/export", Stop);

        var other = export.Replace(quote.GetProperty("validUntil").GetString()!, "2031-01-01", StringComparison.Ordinal);
        Assert.Equal(1, (await Post(server, "/api/import", other)).GetProperty("kept").GetInt32());

        var sameNumber = export.Replace(quote.GetProperty("id").GetString()!, "another", StringComparison.Ordinal);
        Assert.Equal("NumberTaken", (await Post(server, "/api/import", sameNumber)).GetProperty("faults")[0].GetProperty("code").GetString());

        var later = sameNumber.Replace("\"number\": \"0001\"", "\"number\": \"0041\"", StringComparison.Ordinal);
        var told = await Post(server, "/api/import", later);
        await Post(server, "/api/import?plan=" + told.GetProperty("plan").GetString(), later);
        await server.Send(HttpMethod.Put, "/api/rates", """{"margin":"31 %"}""", ifNone: true);
        Assert.Equal("0042", (await Body(await server.Send(HttpMethod.Post, "/api/jobs/demo/quotes"))).GetProperty("number").GetString());
    }

    [Fact]
    public async Task A_level_to_keep_that_comes_in_takes_the_place_of_its_own_and_leaves_the_others()
    {
        await using var server = await OnNewDatabase();
        await server.Send(HttpMethod.Put, "/api/shelf/keep", """{"lapwise":1,"keep":[{"product":"clear-fast-two-part","least":"1 qt"},{"product":"clear-fast-two-part","color":"slate","least":"2 qt"}]}""", ifNone: true);
        const string Other = """{"lapwise":1,"shelf":{"lapwise":1,"entries":[],"keep":[{"product":"clear-fast-two-part","least":"3 qt"}]}}""";
        var told = await Post(server, "/api/import", Other);
        Assert.Equal(("keep", "changed"), (told.GetProperty("steps")[0].GetProperty("part").GetString(), told.GetProperty("steps")[0].GetProperty("what").GetString()));
        await Post(server, "/api/import?plan=" + told.GetProperty("plan").GetString(), Other);
        var keep = JsonSerializer.Deserialize(await server.Http.GetStringAsync("/api/shelf", Stop), JobJson.Default.ShelfDocument)!.Keep!;
        Assert.Equal([("", "3 qt"), ("slate", "2 qt")], keep.Select(k => (k.Color ?? "", k.Least.Text)));
    }

    [Fact]
    public async Task Prices_go_out_as_a_table_and_come_in_by_the_same_two_steps()
    {
        await using var server = await OnNewDatabase();
        var csv = (await server.Http.GetStringAsync("/api/prices.csv", Stop)).Replace("84.00", "91.50", StringComparison.Ordinal);
        var told = await Post(server, "/api/import/prices", csv, "text/csv");
        Assert.Equal(1, told.GetProperty("changed").GetInt32());
        await Post(server, "/api/import/prices?plan=" + told.GetProperty("plan").GetString(), csv, "text/csv");
        Assert.Contains("91.5", await server.Http.GetStringAsync("/api/products/clear-fast-two-part", Stop));
    }

    [Fact]
    public async Task A_document_with_a_fault_changes_nothing_at_all()
    {
        await using var server = await OnNewDatabase();
        var before = await server.Http.GetStringAsync("/api/export", Stop);
        var bad = await Post(server, "/api/import", """{"lapwise":1,"jobs":[{"id":"no good","job":{"name":"x"}}],"rates":{"margin":"1 %"}}""");
        Assert.Equal("jobs[0].id", bad.GetProperty("faults")[0].GetProperty("path").GetString());
        var ghost = await Post(server, "/api/import", """{"lapwise":1,"shelf":{"entries":[{"id":"a","on":"2026-11-20","kind":"opened","pack":"ghost"}]}}""");
        Assert.Equal("PackUnknown", ghost.GetProperty("faults")[0].GetProperty("code").GetString());
        Assert.Equal(before, await server.Http.GetStringAsync("/api/export", Stop));
    }

    [Fact]
    public async Task Ten_thousand_jobs_come_in_and_go_out_and_none_is_lost()
    {
        await using var server = await OnNewDatabase();
        var shop = new ShopDocument { Jobs = [.. Enumerable.Range(0, 10_000).Select(i => new KeptJobDocument { Id = $"j{i}", Job = new JobDocument { Name = $"Job {i}", Tops = [new TopDocument { Name = "Top" }] } })] };
        var text = JsonSerializer.Serialize(shop, ShopJson.Default.ShopDocument);
        var told = await Post(server, "/api/import", text);
        Assert.Equal(10_000, told.GetProperty("new").GetInt32());
        await Post(server, "/api/import?plan=" + told.GetProperty("plan").GetString(), text);
        using var export = JsonDocument.Parse(await server.Http.GetStringAsync("/api/export", Stop));
        Assert.Equal(10_001, export.RootElement.GetProperty("jobs").GetArrayLength());
    }
}
