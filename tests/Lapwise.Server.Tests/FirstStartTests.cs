using System.Net;
using Lapwise.Core.Jobs;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests;

public sealed class FirstStartTests
{
    [Fact]
    public async Task A_new_database_has_the_sample_job_and_the_sample_coatings_it_uses()
    {
        await using var server = await RunningServer.OnNewDatabase();
        var demo = await Body(await server.Send(HttpMethod.Get, "/api/jobs/demo"));
        var products = (await Body(await server.Send(HttpMethod.Get, "/api/products"))).EnumerateArray().Select(p => p.GetProperty("id").GetString()).ToList();
        var used = demo.GetProperty("system").EnumerateArray().Select(c => c.GetProperty("product").GetString()).ToList();
        Assert.NotEmpty(used);
        Assert.All(used, id => Assert.Contains(id, products));
    }

    [Fact]
    public async Task A_sample_job_taken_out_stays_out_after_a_restart()
    {
        await using var server = await RunningServer.OnNewDatabase();
        Assert.Equal(HttpStatusCode.OK, (await server.Send(HttpMethod.Delete, "/api/jobs/demo", ifMatch: "1")).StatusCode);
        await server.Restart();
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/jobs/demo")).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await server.Send(HttpMethod.Put, "/api/jobs/demo", Json(new JobDocument()), ifNone: true)).StatusCode);
    }
}
