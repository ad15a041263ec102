using System.Net;
using Lapwise.Core.Jobs;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Timeline;

public sealed class DaysFileTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task The_days_of_a_stored_job_go_out_as_a_calendar()
    {
        var demo = await Demo();
        await server.Send(HttpMethod.Put, "/api/jobs/dated", Json(demo with { Timeline = new TimelineDocument { Start = "2026-12-07", Zone = "Europe/Madrid" } }), ifNone: true);
        var answer = await server.Send(HttpMethod.Get, "/api/jobs/dated/days.ics");
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal("text/calendar", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains("UID:dated-visit-1@lapwise", text, StringComparison.Ordinal);
        Assert.Contains("DTSTART;TZID=Europe/Madrid:20261207T080000", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Days_without_a_date_are_refused_with_what_would_cure_it()
    {
        var demo = await Demo();
        await server.Send(HttpMethod.Put, "/api/jobs/counted", Json(demo with { Timeline = null }), ifNone: true);
        var answer = await server.Send(HttpMethod.Get, "/api/jobs/counted/days.ics");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("NoFirstDay", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private async Task<JobDocument> Demo()
    {
        var answer = await server.Send(HttpMethod.Get, "/api/jobs/demo");
        return System.Text.Json.JsonSerializer.Deserialize(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), JobJson.Default.JobDocument)!;
    }
}
