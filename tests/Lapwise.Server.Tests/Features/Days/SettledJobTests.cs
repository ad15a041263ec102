using System.Globalization;
using System.Net;
using System.Text.Json;
using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Days;

/// <summary>What goes to the customer and to buying once the days of a job are settled.</summary>
public sealed class SettledJobTests : IAsyncLifetime
{
    private static readonly Voice English = new(Language.English, UnitSystem.Us);
    private static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Metric);
    // Well after the first day the job itself names.
    private static readonly DateOnly First = DateOnly.FromDateTime(DateTime.Now).AddDays(70);
    private RunningServer server = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => server = await OnNewDatabase();

    public ValueTask DisposeAsync() => server.DisposeAsync();

    [Fact]
    public async Task Papers_price_quote_and_purchase_follow_the_settled_days()
    {
        var own = await Demo();
        var visits = await Settle();
        var coats = visits.Where(v => v.IsCoat).ToList();
        var on = own.On(visits);
        Assert.True(on.Timeline.IsSettled && on.Timeline.Holds);

        foreach (var (voice, query) in new[] { (English, "language=en&units=us"), (Spanish, "language=es&units=metric") })
        {
            string Day(DateTime at) => Plain(voice.WeekDay(DateOnly.FromDateTime(at)));
            foreach (var paper in new[] { "papers/days", "papers/packet", "sheet" })
            {
                var text = await Text($"/api/jobs/demo/{paper}?{query}");
                Assert.All(coats, c => Assert.Contains(Day(c.Begins), text, StringComparison.Ordinal));
                Assert.DoesNotContain(Day(own.Timeline.CoatedOn(0)!.Value.ToDateTime(TimeOnly.MinValue)), text, StringComparison.Ordinal);
                Assert.Contains(voice.Say("Settled days", "Días acordados"), text, StringComparison.Ordinal);
            }

            var care = await Text($"/api/jobs/demo/papers/care?{query}");
            Assert.All(on.Timeline.UseDates, u => Assert.Contains(Day(u.From), care, StringComparison.Ordinal));
        }

        Assert.Contains(Plain(English.Date(DateOnly.FromDateTime(coats[^1].Begins))), await Text("/api/purchase/list?language=en&units=us"), StringComparison.Ordinal);

        var quote = await Issue();
        Assert.Contains(Without(on), await Text($"/api/quotes/{quote}/quote"), StringComparison.Ordinal);
        Assert.Equal(quote, await Issue());
        var later = await Settle(First.AddDays(14));
        Assert.NotEqual(visits[0].From, later[0].From);
        Assert.Contains(Without(on), await Text($"/api/quotes/{quote}/quote"), StringComparison.Ordinal); // frozen
        var next = await Issue();
        Assert.NotEqual(quote, next);
        Assert.Contains("days.visit 1", await Text($"/api/quotes/{next}/differences"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Days_settled_before_the_job_was_changed_are_said_loudly_and_not_shown_as_if_they_held()
    {
        await Settle();
        await Change(j => j with { System = [j.System[0]] });

        foreach (var paper in new[] { "days", "care", "packet" })
        {
            Assert.Contains("settled before the job was changed", await Text($"/api/jobs/demo/papers/{paper}?language=en"), StringComparison.Ordinal);
            Assert.Contains("se acordaron otros antes de cambiar el trabajo", await Text($"/api/jobs/demo/papers/{paper}?language=es"), StringComparison.Ordinal);
        }

        Assert.Contains("they no longer fit it", await Text($"/api/quotes/{await Issue()}/quote"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_file_of_a_job_and_the_feed_tell_the_same_times_under_the_same_ids()
    {
        await Change(j => j with { Name = "Changed once" });
        var before = Events(await Text("/api/jobs/demo/days.ics"));
        await Settle();
        var address = new Uri((await Body(await server.Send(HttpMethod.Post, "/api/days/feed"))).GetProperty("here").GetString()!).PathAndQuery;
        var feed = Events(await Text(address));
        var file = Events(await Text("/api/jobs/demo/days.ics"));

        Assert.Equal(feed.OrderBy(e => e.Id), file.Where(e => e.Id.Contains("-visit-", StringComparison.Ordinal)).OrderBy(e => e.Id));
        Assert.Equal((await Demo()).Timeline.UseDates.Count, file.Count(e => e.Id.Contains("-use-", StringComparison.Ordinal)));
        // Who took the job's own days into a calendar before gets the settled ones as newer.
        Assert.All(before, b => Assert.True(file.Single(e => e.Id == b.Id).Sequence > b.Sequence));

        await Change(j => j with { System = [j.System[0]] });
        Assert.Equal(feed.OrderBy(e => e.Id), Events(await Text("/api/jobs/demo/days.ics")).OrderBy(e => e.Id));
    }

    [Fact]
    public async Task Settled_days_go_out_and_come_in_again_and_it_is_told_before()
    {
        var visits = await Settle();
        var export = await Raw("/api/export");
        await using var elsewhere = await OnNewDatabase();
        var told = await Body(await elsewhere.Send(HttpMethod.Post, "/api/import", export));
        Assert.Contains(told.GetProperty("steps").EnumerateArray(), s => (s.GetProperty("part").GetString(), s.GetProperty("what").GetString()) == ("settled", "new"));
        Assert.Contains("\"times\":0", await elsewhere.Http.GetStringAsync("/api/days/settled", Cancel));

        await elsewhere.Send(HttpMethod.Post, "/api/import?plan=" + told.GetProperty("plan").GetString(), export);
        Assert.Equal(export, await elsewhere.Http.GetStringAsync("/api/export", Cancel));
        Assert.Equal(visits, JsonSerializer.Deserialize(await elsewhere.Http.GetStringAsync("/api/days/settled", Cancel), JobJson.Default.SettledDaysDocument)!.Visits);

        // Settled otherwise since: taken in again they are written over, told value by value, and a calendar sees them as newer.
        var own = await Settle(First.AddDays(14));
        told = await Body(await server.Send(HttpMethod.Post, "/api/import", export));
        var step = Assert.Single(told.GetProperty("steps").EnumerateArray(), s => s.GetProperty("part").GetString() == "settled");
        Assert.Contains(step.GetProperty("differences").EnumerateArray(), d => d.GetProperty("after").GetString() == visits[0].From);
        await server.Send(HttpMethod.Post, "/api/import?plan=" + told.GetProperty("plan").GetString(), export);
        var now = await SettledNow();
        Assert.Equal(visits.Select(v => (v.Id, v.From)), now.Select(v => (v.Id, v.From)));
        Assert.All(now, v => Assert.True(v.Changed > own.Max(o => o.Changed)));
        told = await Body(await server.Send(HttpMethod.Post, "/api/import", export));
        Assert.DoesNotContain(told.GetProperty("steps").EnumerateArray(), s => s.GetProperty("part").GetString() == "settled");
    }

    [Fact]
    public async Task A_settled_day_that_is_none_is_refused_by_its_place()
    {
        var refused = await Body(await server.Send(HttpMethod.Post, "/api/import", """{"lapwise":1,"settled":{"visits":[{"job":"demo","number":1,"from":"soon"}]}}"""));
        Assert.Equal("settled.visits[0].from", refused.GetProperty("faults")[0].GetProperty("path").GetString());
    }

    private async Task<IReadOnlyList<VisitDocument>> Settle(DateOnly? first = null)
    {
        var stood = await server.Send(HttpMethod.Get, "/api/days");
        var entered = $$"""{"first":"{{first ?? First:yyyy-MM-dd}}"}""";
        await (stood.Headers.ETag is null ? server.Send(HttpMethod.Put, "/api/days", entered, ifNone: true) : server.Send(HttpMethod.Put, "/api/days", entered, ifMatch: VersionOf(stood)));
        var told = await Search(HttpMethod.Post, first is null ? "" : "?afresh");
        while (told.State is DaysState.Reading or DaysState.Searching)
        {
            await Task.Delay(50, Cancel);
            told = await Search(HttpMethod.Get);
        }

        Assert.Equal(HttpStatusCode.OK, (await server.Send(HttpMethod.Put, "/api/days/settled?input=" + told.Input)).StatusCode);
        return await SettledNow();
    }

    private async Task<IReadOnlyList<VisitDocument>> SettledNow() => JsonSerializer.Deserialize(await Raw("/api/days/settled"), JobJson.Default.SettledDaysDocument)!.Visits;

    private async Task<DaysAnswer> Search(HttpMethod method, string query = "") =>
        JsonSerializer.Deserialize(await (await server.Send(method, "/api/days/search" + query)).Content.ReadAsStringAsync(Cancel), DaysJson.Default.DaysAnswer)!;

    private async Task Change(Func<JobDocument, JobDocument> change)
    {
        var stored = await server.Send(HttpMethod.Get, "/api/jobs/demo");
        var job = JsonSerializer.Deserialize(await stored.Content.ReadAsStringAsync(Cancel), JobJson.Default.JobDocument)!;
        Assert.True((await server.Send(HttpMethod.Put, "/api/jobs/demo", Json(change(job)), ifMatch: VersionOf(stored))).IsSuccessStatusCode);
    }

    private async Task<WholeJob> Demo() => WholeJob.From(
        JsonSerializer.Deserialize(await Raw("/api/jobs/demo"), JobJson.Default.JobDocument)!,
        JsonSerializer.Deserialize(await Raw("/api/products"), JobJson.Default.IReadOnlyListProductDocument)!).Whole!;

    private async Task<string> Issue() => (await Body(await server.Send(HttpMethod.Post, "/api/jobs/demo/quotes?language=en&units=us"))).GetProperty("id").GetString()!;

    /// <summary>The days without the tops, as a quote says them.</summary>
    private static string Without(WholeJob on)
    {
        var from = DateOnly.FromDateTime(on.Timeline.Steps[0].Start).DayNumber;
        var back = on.Timeline.Steps.Where(s => s.Kind == SiteStep.PutBack).Select(s => s.End).Append(on.Timeline.UseDates.Single(u => u.Use == UseOf.LightUse).From).Max();
        return string.Create(CultureInfo.InvariantCulture, $"Plan on about {DateOnly.FromDateTime(back).DayNumber - from + 1} days");
    }

    private static List<(string Id, int Sequence, string Start)> Events(string calendar) =>
        [.. calendar.Split("BEGIN:VEVENT").Skip(1).Select(e => (Line(e, "UID:"), int.Parse(Line(e, "SEQUENCE:"), CultureInfo.InvariantCulture), Line(e, "DTSTART")))];

    private static string Line(string of, string begins) => of.Split('\n').Single(l => l.StartsWith(begins, StringComparison.Ordinal))[begins.Length..].Trim();

    private async Task<string> Raw(string address) => await server.Http.GetStringAsync(address, Cancel);

    private async Task<string> Text(string address) => Plain(WebUtility.HtmlDecode(await Raw(address)));

    private static string Plain(string text) => text.Replace('\u00a0', ' ').Replace('\u202f', ' ');
}
