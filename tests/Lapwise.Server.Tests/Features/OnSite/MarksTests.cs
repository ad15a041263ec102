using System.Net;
using System.Text.Json;
using Lapwise.Core.OnSite;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.OnSite;

public sealed class MarksTests(RunningServer server) : IClassFixture<RunningServer>
{
    private static MarkDocument Mark(string device, int number, string kind = "note") =>
        new() { Id = $"{device}-{number}", Device = device, Number = number, Kind = kind, ClockMs = 1_790_000_000_000 + number, Session = "s", Text = "Año — 5/8\"" };

    private static string Json(params IReadOnlyList<MarkDocument> marks) => JsonSerializer.Serialize(marks, RunJson.Default.IReadOnlyListMarkDocument);

    private async Task<MarksAnswer> Post(string run, string body, long after = 0)
    {
        var answer = await server.Send(HttpMethod.Post, $"/api/jobs/kitchen/runs/{run}/marks?after={after}", body);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return JsonSerializer.Deserialize(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), RunJson.Default.MarksAnswer)!;
    }

    [Fact]
    public async Task Marks_sent_twice_are_there_once_and_outlive_the_server()
    {
        await Post("twice", Json(Mark("a", 1), Mark("a", 2)));
        await Post("twice", Json(Mark("a", 2), Mark("a", 1), Mark("a", 3)));
        await server.Restart();

        var back = await Post("twice", Json());
        Assert.Equal(["a-1", "a-2", "a-3"], back.Marks.Select(m => m.Id));
        Assert.Equal(Json(Mark("a", 1)), Json(back.Marks[0]));
    }

    [Fact]
    public async Task The_first_mark_under_an_id_stays()
    {
        await Post("first", Json(Mark("a", 1)));
        await Post("first", Json(Mark("a", 1) with { Text = "another" }));
        Assert.Equal("Año — 5/8\"", Assert.Single((await Post("first", Json())).Marks).Text);
    }

    [Fact]
    public async Task A_device_asks_for_what_it_does_not_have_and_is_told_the_time()
    {
        var before = DateTimeOffset.UtcNow.ToUnixTimeMilliseconds();
        var first = await Post("after", Json(Mark("a", 1)));
        Assert.InRange(first.NowMs, before, DateTimeOffset.UtcNow.ToUnixTimeMilliseconds());
        await Post("after", Json(Mark("b", 1)));

        Assert.Equal("b-1", Assert.Single((await Post("after", Json(), first.Upto)).Marks).Id);
        var read = await Body(await server.Send(HttpMethod.Get, $"/api/jobs/kitchen/runs/after/marks?after={first.Upto}"));
        Assert.Equal("b-1", read.GetProperty("marks")[0].GetProperty("id").GetString());
    }

    [Fact]
    public async Task Many_devices_at_once_lose_nothing()
    {
        await Task.WhenAll(Enumerable.Range(0, 12).Select(d => Post("many", Json([.. Enumerable.Range(1, 20).Select(n => Mark($"d{d}", n))]))));
        Assert.Equal(240, (await Post("many", Json())).Marks.Select(m => m.Id).Distinct().Count());
    }

    [Fact]
    public async Task A_long_log_comes_in_parts()
    {
        await Post("long", Json([.. Enumerable.Range(1, 1200).Select(n => Mark("a", n))]));
        var first = await Post("long", Json());
        Assert.Equal(1000, first.Marks.Count);
        Assert.Equal(200, (await Post("long", Json(), first.Upto)).Marks.Count);
    }

    [Fact]
    public async Task A_mark_of_a_newer_program_is_kept_with_all_it_says()
    {
        await Post("newer", """[{"id":"n-1","device":"n","number":1,"kind":"filmWeighed","clockMs":1,"session":"s","ticksMs":1,"weighedG":4.5}]""");
        Assert.Contains("\"weighedG\":4.5", Json((await Post("newer", Json())).Marks[0]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Runs_of_a_job_are_listed_the_last_marked_first()
    {
        await server.Send(HttpMethod.Post, "/api/jobs/listed/runs/r1/marks", Json(Mark("a", 1)));
        await server.Send(HttpMethod.Post, "/api/jobs/listed/runs/r2/marks", Json(Mark("a", 1)));
        await server.Send(HttpMethod.Post, "/api/jobs/listed/runs/r1/marks", Json(Mark("a", 2)));

        var runs = await Body(await server.Send(HttpMethod.Get, "/api/jobs/listed/runs"));
        Assert.Equal(["r1", "r2"], runs.EnumerateArray().Select(r => r.GetProperty("run").GetString()));
    }

    [Theory]
    [InlineData("not json")]
    [InlineData("{}")]
    [InlineData("[null]")]
    [InlineData("[{\"id\":\"\",\"device\":\"a\"}]")]
    [InlineData("[{\"id\":\"a b\",\"device\":\"a\"}]")]
    [InlineData("[{\"id\":\"a\",\"device\":\"a\",\"number\":\"one\"}]")]
    public async Task A_body_that_cannot_be_used_is_refused_whole(string body)
    {
        Assert.Equal(HttpStatusCode.BadRequest, (await server.Send(HttpMethod.Post, "/api/jobs/kitchen/runs/bad/marks", body)).StatusCode);
        Assert.Empty((await Post("bad", Json())).Marks);
    }

    [Fact]
    public async Task The_record_of_a_run_is_a_paper_and_a_page_and_without_its_plan_there_is_none()
    {
        var plan = new IssuedPlan { Job = "Tidemill house", Product = "Invented clear", OpenTimeMs = 480_000, PotLifeMs = 2_700_000, Crew = ["Alba"], Sections = [new() { Id = "1", Top = "Island", TakesMs = [180_000], EndMs = 180_000 }] };
        await Post("told", Json(Mark("a", 2)));
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/jobs/kitchen/runs/told/record")).StatusCode);
        await Post("told", Json(MarkReading.Write(new Mark(new Stamp("a-1", new DeviceMoment("a", "s", 1_790_000_000_000, 0), 1, false, 0), new What.Issued(plan)))));

        var page = await server.Send(HttpMethod.Get, "/api/jobs/kitchen/runs/told/record?language=en");
        Assert.Contains("Record of what was done", await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        var paper = await server.Send(HttpMethod.Get, "/api/jobs/kitchen/runs/told/record.pdf");
        Assert.Equal("application/pdf", paper.Content.Headers.ContentType?.MediaType);
    }
}
