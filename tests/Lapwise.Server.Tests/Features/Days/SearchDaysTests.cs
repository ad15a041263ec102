using System.Globalization;
using System.Net;
using System.Text.Json;
using Lapwise.Core.Answers;
using Lapwise.Core.Jobs;
using Lapwise.Core.Shop;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Days;

/// <summary>Days of many jobs as a page asks for them: entered, searched in the background, settled, and searched anew.</summary>
public sealed class SearchDaysTests : IAsyncLifetime
{
    private RunningServer server = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => server = await OnNewDatabase();

    public ValueTask DisposeAsync() => server.DisposeAsync();

    [Fact]
    public async Task The_same_input_is_searched_once_and_gives_the_same_days_after_a_restart()
    {
        await Copies("second");
        await Enter(Two);
        var first = await Ended();
        Assert.Equal(DaysState.Done, first.State);
        Assert.True(first.IsRepeatable);
        Assert.Equal(2, first.Visits.Select(v => v.Job).Distinct().Count());
        Assert.Equal(first.Input, (await Begin()).Input);

        await server.Restart();
        Assert.Equal(DaysState.None, (await Look()).State);
        Assert.Equal(2, (await Read<DaysDocument>("/api/days", JobJson.Default.DaysDocument)).Crews!.Count);
        var again = await Ended();
        Assert.Equal(first.Visits, again.Visits);
    }

    [Fact]
    public async Task A_day_lost_moves_what_was_settled_and_says_why_and_a_visit_that_stays_does_not_move()
    {
        await Enter(Two);
        var first = await Ended();
        var settled = await Settle(first.Input);
        Assert.Equal(first.Visits.Select(v => (v.Id, v.From)), settled.Visits.Select(v => (v.Id, v.From)));
        Assert.True((await Look()).IsOld);
        Assert.All(settled.Visits, v => Assert.Equal(settled.Times, v.Changed));

        var coat = settled.Visits.First(v => v.IsCoat);
        var stays = settled.Visits[0];
        await Enter(Two with
        {
            Lost = [new LostDayDocument { Date = coat.From[..10] }],
            Stays = [new StayDocument { Visit = stays.Id, From = stays.From, Crew = stays.Crew }],
        });
        var next = await Ended();

        Assert.Equal(stays.From, next.Visits.Single(v => v.Id == stays.Id).From);
        Assert.NotEqual(coat.From[..10], next.Visits.Single(v => v.Id == coat.Id).From[..10]);
        var moved = next.Moves.Single(m => m.Visit == coat.Id);
        Assert.Equal((coat.From, next.Visits.Single(v => v.Id == coat.Id).From), (moved.From, moved.To));
        Assert.Contains("a day lost", moved.Why, StringComparison.Ordinal);
        Assert.Single(next.Moves.Select(m => m.Why).Distinct());
        Assert.DoesNotContain(next.Moves, m => m.Visit == stays.Id);

        var later = await Settle(next.Input);
        Assert.True(later.Times > settled.Times);
        Assert.Equal(later.Times, later.Visits.Single(v => v.Id == coat.Id).Changed);
        Assert.Equal(settled.Times, later.Visits.Single(v => v.Id == stays.Id).Changed);
    }

    [Fact]
    public async Task A_visit_kept_in_place_before_the_deposit_is_in_is_told_and_stays()
    {
        await Enter(Two);
        var first = await Ended();
        Assert.Empty(first.NotFixed);
        var visit = first.Visits[^1];
        await Enter(Two with { Stays = [new StayDocument { Visit = visit.Id, From = visit.From, Crew = visit.Crew }] });
        var told = await Ended();
        Assert.Equal((visit.Job, visit.Name), Assert.Single(told.NotFixed.Select(j => (j.Job, j.Name))));
        Assert.Contains("deposit", told.NotFixed[0].Why, StringComparison.Ordinal);
        Assert.Equal(visit.From, told.Visits.Single(v => v.Id == visit.Id).From);

        var stored = await server.Send(HttpMethod.Get, $"/api/jobs/{visit.Job}");
        var job = JsonSerializer.Deserialize(await stored.Content.ReadAsStringAsync(Cancel), JobJson.Default.JobDocument)!;
        await server.Send(HttpMethod.Put, $"/api/jobs/{visit.Job}", Json(job with { Agreement = (job.Agreement ?? new AgreementDocument()) with { DepositInOn = "2026-11-25" } }), ifMatch: VersionOf(stored));
        Assert.Empty((await Ended()).NotFixed);
    }

    [Fact]
    public async Task A_coat_kept_on_a_day_lost_stays_and_is_told()
    {
        await Enter(Two);
        var first = await Ended();
        Assert.Empty(first.Notes);
        var coat = first.Visits.First(v => v.IsCoat);
        await Enter(Two with { Lost = [new LostDayDocument { Date = coat.From[..10] }], Stays = [new StayDocument { Visit = coat.Id, From = coat.From, Crew = coat.Crew }] });
        var told = await Ended();

        Assert.Equal(coat.From, told.Visits.Single(v => v.Id == coat.Id).From);
        Assert.Contains("is a day lost", Assert.Single(told.Notes, n => n.Code == "KeptAtYourWord").Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_used_is_kept_as_entered_and_refused_by_its_field()
    {
        await Enter(Two with { First = "soon" });
        var told = await Ended();

        Assert.Equal(DaysState.Refused, told.State);
        Assert.Contains("first", Assert.Single(told.Reasons).Text, StringComparison.Ordinal);
        Assert.Equal("soon", (await Read<DaysDocument>("/api/days", JobJson.Default.DaysDocument)).First);
    }

    [Fact]
    public async Task Windows_that_cannot_all_be_met_are_named()
    {
        await Enter(Two);
        var visits = (await Ended()).Visits;
        // Two visits of one job at the same hour.
        await Enter(Two with { Stays = [.. visits.Take(2).Select(v => new StayDocument { Visit = v.Id, From = visits[^1].From })] });
        var told = await Ended();

        Assert.Equal(DaysState.Impossible, told.State);
        Assert.Equal("WindowsContradict", Assert.Single(told.Reasons).Code);
        Assert.Contains("stays", told.Reasons[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Jobs_that_do_not_fit_into_the_days_are_told_at_once_with_by_how_much()
    {
        await Copies([.. Enumerable.Range(0, 19).Select(i => $"copy{i}")]);
        await Enter(Two with { DaysAhead = 21 });
        var told = await Ended();

        Assert.Equal(DaysState.Impossible, told.State);
        Assert.Equal("WorkBeyondHours", Assert.Single(told.Reasons).Code);
        Assert.Contains("too much", told.Reasons[0].Text, StringComparison.Ordinal);
        Assert.Contains("later", told.Reasons[0].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_no_days_fit_it_is_told_how_far_off_the_best_is()
    {
        await Copies([.. Enumerable.Range(0, 9).Select(i => $"copy{i}")]);
        await Enter(Two with { Crews = [new ShopCrewDocument { Name = "Wren" }], DaysAhead = 35 });
        var now = await Begin();
        while (now.State == DaysState.Reading || now is { State: DaysState.Searching, Better: 0, Reasons.Count: 0 }) now = await Look();

        Assert.Equal("NoDaysFound", Assert.Single(now.Reasons).Code);
        Assert.Contains("after the days planned", now.Reasons[0].Text, StringComparison.Ordinal);
        await server.Send(HttpMethod.Delete, "/api/days/search");
    }

    [Fact]
    public async Task A_job_with_a_fault_is_left_out_by_its_name()
    {
        await server.Send(HttpMethod.Put, "/api/jobs/empty", Json(new JobDocument { Name = "Nothing yet" }), ifNone: true);
        var told = await Ended();

        Assert.Equal("Nothing yet", Assert.Single(told.LeftOut).Name);
        Assert.NotEmpty(told.Visits);
    }

    [Fact]
    public async Task Ten_thousand_jobs_are_refused_with_what_would_cure_it()
    {
        var shop = new ShopDocument { Jobs = [.. Enumerable.Range(0, 10_000).Select(i => new KeptJobDocument { Id = $"j{i}", Job = new JobDocument { Name = $"Job {i}" } })] };
        var text = JsonSerializer.Serialize(shop, ShopJson.Default.ShopDocument);
        var plan = (await Body(await server.Send(HttpMethod.Post, "/api/import", text))).GetProperty("plan").GetString();
        await server.Send(HttpMethod.Post, $"/api/import?plan={plan}", text);
        var told = await Ended();

        Assert.Equal((DaysState.Refused, "TooManyJobs"), (told.State, Assert.Single(told.Reasons).Code));
        Assert.Contains("10001", told.Reasons[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Looked_at_for_longer_what_was_found_stands_and_is_never_worse()
    {
        await Copies("second");
        // Deadlines that cannot be met: how late all must end is bounded, but not proven.
        await Enter(new DaysDocument { Jobs = [.. new[] { "demo", "second" }.Select(j => new JobDaysDocument { Job = j, EndBy = DateTime.Now.AddDays(3).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) })] });
        var first = await Ended();
        Assert.Equal((DaysState.Done, 0, true), (first.State, first.Longer, first.CanLookOn));

        var further = await Told(HttpMethod.Post, "?longer");
        Assert.Equal((1, first.Input), (further.Longer, further.Input));
        Assert.NotEmpty(further.Visits);
        var then = await Ended();
        Assert.Equal(1, then.Longer);
        Assert.True(string.CompareOrdinal(then.LastEnd, first.LastEnd) <= 0 && string.CompareOrdinal(then.Bound, first.Bound) >= 0);
    }

    [Fact]
    public async Task What_is_proven_is_not_looked_at_for_longer()
    {
        await Enter(Two);
        var first = await Ended();
        Assert.Equal((true, false), (first.IsProven, first.CanLookOn));
        Assert.Equal(0, (await Told(HttpMethod.Post, "?longer")).Longer);
    }

    [Fact]
    public async Task A_search_that_is_stopped_keeps_the_best_so_far()
    {
        // Many alike jobs for one crew are not proven at once.
        await Copies([.. Enumerable.Range(0, 9).Select(i => $"copy{i}")]);
        await Enter(Two);
        var now = await Begin();
        while (now.Better == 0 && now.State is DaysState.Reading or DaysState.Searching) now = await Look();
        Assert.NotEqual(0, now.Better);
        var answer = await server.Send(HttpMethod.Delete, "/api/days/search");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        while ((now = await Look()).State == DaysState.Searching) await Task.Delay(50, Cancel);

        Assert.True(now.State is DaysState.Stopped or DaysState.Done);
        Assert.Equal(10, now.Visits.Select(v => v.Job).Distinct().Count());
    }

    private static readonly DaysDocument Two = new() { Crews = [new ShopCrewDocument { Name = "Wren" }, new ShopCrewDocument { Name = "Alder" }] };

    private async Task Copies(params IReadOnlyList<string> ids)
    {
        var demo = await (await server.Send(HttpMethod.Get, "/api/jobs/demo")).Content.ReadAsStringAsync(Cancel);
        foreach (var id in ids) await server.Send(HttpMethod.Put, $"/api/jobs/{id}", demo, ifNone: true);
    }

    private async Task Enter(DaysDocument document)
    {
        var stood = await server.Send(HttpMethod.Get, "/api/days");
        var text = JsonSerializer.Serialize(document, JobJson.Default.DaysDocument);
        var answer = stood.Headers.ETag is null
            ? await server.Send(HttpMethod.Put, "/api/days", text, ifNone: true)
            : await server.Send(HttpMethod.Put, "/api/days", text, ifMatch: VersionOf(stood));
        Assert.True(answer.IsSuccessStatusCode);
    }

    private Task<DaysAnswer> Begin() => Told(HttpMethod.Post);

    private Task<DaysAnswer> Look() => Told(HttpMethod.Get);

    private async Task<DaysAnswer> Ended()
    {
        var now = await Begin();
        while (now.State is DaysState.Reading or DaysState.Searching)
        {
            await Task.Delay(50, Cancel);
            now = await Look();
        }

        return now;
    }

    private async Task<SettledDaysDocument> Settle(string input)
    {
        var answer = await server.Send(HttpMethod.Put, $"/api/days/settled?input={input}");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await Read<SettledDaysDocument>("/api/days/settled", JobJson.Default.SettledDaysDocument);
    }

    private async Task<DaysAnswer> Told(HttpMethod method, string query = "") =>
        JsonSerializer.Deserialize(await (await server.Send(method, "/api/days/search" + query)).Content.ReadAsStringAsync(Cancel), DaysJson.Default.DaysAnswer)!;

    private async Task<T> Read<T>(string address, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> json) =>
        JsonSerializer.Deserialize(await (await server.Send(HttpMethod.Get, address)).Content.ReadAsStringAsync(Cancel), json)!;
}
