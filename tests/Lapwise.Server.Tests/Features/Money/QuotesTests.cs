using System.Net;
using System.Text.Json;
using Lapwise.Core.Jobs;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Money;

public sealed class QuotesTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_quote_given_out_stays_as_it_was_and_a_change_makes_a_new_one_that_says_what_differs()
    {
        await using var server = await OnNewDatabase();
        var first = await Body(await server.Send(HttpMethod.Post, "/api/jobs/demo/quotes"));
        var id = first.GetProperty("id").GetString();
        var frozen = await server.Http.GetStringAsync("/api/quotes/" + id, Stop);
        var again = await server.Send(HttpMethod.Post, "/api/jobs/demo/quotes");
        Assert.Equal((HttpStatusCode.OK, id), (again.StatusCode, (await Body(again)).GetProperty("id").GetString()));

        await server.Send(HttpMethod.Put, "/api/rates", """{"margin":"35 %"}""", ifNone: true);
        var second = await Body(await server.Send(HttpMethod.Post, "/api/jobs/demo/quotes"));
        Assert.Equal(("0002", id), (second.GetProperty("number").GetString(), second.GetProperty("replaces").GetString()));
        Assert.Equal(frozen, await server.Http.GetStringAsync("/api/quotes/" + id, Stop));

        var differ = await server.Http.GetStringAsync($"/api/quotes/{second.GetProperty("id").GetString()}/differences", Stop);
        Assert.Contains("rates.margin", differ);
        Assert.Contains("price.total", differ);
        Assert.Equal("application/pdf", (await server.Send(HttpMethod.Get, $"/api/quotes/{id}/quote.pdf")).Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task What_was_given_out_outlives_its_job()
    {
        await using var server = await OnNewDatabase();
        var id = (await Body(await server.Send(HttpMethod.Post, "/api/jobs/demo/quotes"))).GetProperty("id").GetString();
        await server.Send(HttpMethod.Get, "/api/jobs/demo/papers/tickets.pdf");
        var ticket = "/api/jobs/demo/papers/given/" + Path.GetFileName(Assert.Single(Directory.GetFiles(server.Settings.DataFolder, "1-*.pdf", SearchOption.AllDirectories)));
        var stored = await server.Send(HttpMethod.Get, "/api/jobs/demo");
        Assert.Equal(HttpStatusCode.OK, (await server.Send(HttpMethod.Delete, "/api/jobs/demo", ifMatch: VersionOf(stored))).StatusCode);

        foreach (var address in new[] { $"/api/quotes/{id}/quote.pdf", ticket })
            Assert.Equal("application/pdf", (await server.Send(HttpMethod.Get, address)).Content.Headers.ContentType!.MediaType);
        Assert.Contains(id!, await server.Http.GetStringAsync("/api/jobs/demo/quotes", Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("tickets.pdf", "application/pdf")]
    [InlineData("packet.pdf", "application/pdf")]
    [InlineData("care", "text/html")]
    public async Task Papers_of_the_job_come_as_asked(string what, string type)
    {
        await using var server = await OnNewDatabase();
        Assert.Equal(type, (await server.Send(HttpMethod.Get, "/api/jobs/demo/papers/" + what)).Content.Headers.ContentType!.MediaType);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/jobs/demo/papers/novel")).StatusCode);
    }

    [Fact]
    public async Task An_expired_lot_is_refused_and_the_log_stays_as_it_was()
    {
        await using var server = await OnNewDatabase();
        await server.Send(HttpMethod.Post, "/api/shelf/entries", """[{"id":"r1","on":"2026-11-20","kind":"received","pack":"C7","product":"clear-fast-two-part","lot":"L7","size":"24 fl oz","expires":"2026-11-21"}]""");
        var before = await server.Http.GetStringAsync("/api/shelf", Stop);
        var refused = await server.Send(HttpMethod.Post, "/api/shelf/entries", """[{"id":"t1","on":"2026-11-24","kind":"taken","pack":"C7","a":"2 fl oz","b":"1 fl oz"}]""");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Equal("LotExpired", (await Body(refused)).GetProperty("faults")[0].GetProperty("code").GetString());
        Assert.Equal(before, await server.Http.GetStringAsync("/api/shelf", Stop));
    }

    [Fact]
    public async Task Rates_in_another_currency_than_the_kits_are_refused_where_they_stand()
    {
        await using var server = await OnNewDatabase();
        await server.Send(HttpMethod.Put, "/api/rates", """{"currency":"USD","hourlyWage":"30 EUR"}""", ifNone: true);
        var refused = await Body(await server.Send(HttpMethod.Get, "/api/jobs/demo/price"));
        Assert.Equal(("rates: hourlyWage", "CurrencyMixed"), (refused.GetProperty("faults")[0].GetProperty("path").GetString(), refused.GetProperty("faults")[0].GetProperty("code").GetString()));
    }
}
