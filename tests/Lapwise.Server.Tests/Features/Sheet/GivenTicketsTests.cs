using System.Net;
using System.Text.Json;
using Lapwise.Core;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Sheet;

/// <summary>A ticket given out stays as it was, whatever becomes of the job.</summary>
public sealed class GivenTicketsTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task Tickets_can_be_had_again_as_they_were_given_out_after_the_job_changed()
    {
        var demo = JsonSerializer.Deserialize(await Text("/api/jobs/demo"), JobJson.Default.JobDocument)!;
        var library = JsonSerializer.Deserialize(await Text("/api/products"), JobJson.Default.IReadOnlyListProductDocument)!;
        var saved = await server.Send(HttpMethod.Put, "/api/jobs/given", Json(demo), ifNone: true);
        var before = WholeJob.From(demo, library).Whole!;
        var mark = TicketMark.Of(before.Supply.Coats[0], before.Work.Coats[0]);
        var address = $"/api/jobs/given/papers/given/1-{mark}.pdf";
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, address)).StatusCode);

        var paper = await Bytes("/api/jobs/given/papers/tickets.pdf");
        var thicker = demo with { System = [demo.System[0] with { WetFilm = "9 mil" }, .. demo.System.Skip(1)] };
        await server.Send(HttpMethod.Put, "/api/jobs/given", Json(thicker), ifMatch: saved.Headers.ETag!.Tag.Trim('"'));
        Assert.NotEqual(paper, await Bytes("/api/jobs/given/papers/tickets.pdf"));
        Assert.Equal(paper, await Bytes(address));
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/jobs/given/papers/given/1-00000000.pdf")).StatusCode);
    }

    private async Task<string> Text(string address) => await (await server.Send(HttpMethod.Get, address)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    private async Task<byte[]> Bytes(string address) => await (await server.Send(HttpMethod.Get, address)).Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
}
