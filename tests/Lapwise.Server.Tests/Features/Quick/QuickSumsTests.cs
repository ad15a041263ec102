using System.Net;
using System.Text.Json;
using Lapwise.Core.Explain;
using Lapwise.Core.Quick;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Quick;

public sealed class QuickSumsTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task Every_sum_is_listed_with_what_it_asks_for_and_has_a_route()
    {
        var listed = JsonSerializer.Deserialize(await server.Http.GetStringAsync("/api/quick?language=es", TestContext.Current.CancellationToken), QuickJson.Default.IReadOnlyListQuickAsk)!;
        Assert.Equal(QuickSum.All.Select(s => (s.Name, s.Fields.Count)), listed.Select(s => (s.Sum, s.Fields.Count)));
        Assert.Equal("Película", listed.Single(s => s.Sum == "film").Title);
        var described = await Body(await server.Send(HttpMethod.Get, "/api/openapi.json"));
        Assert.All(QuickSum.All, sum => Assert.Equal(
            sum.Fields.Where(f => !f.IsLines).Select(f => f.Name),
            described.GetProperty("paths").GetProperty("/api/quick/" + sum.Name).GetProperty("get").GetProperty("parameters").EnumerateArray().Select(p => p.GetProperty("name").GetString())));
    }

    [Fact]
    public async Task The_servers_number_is_the_cores_number_to_the_last_digit()
    {
        var sum = QuickSum.All.Single(s => s.Name == "film");
        var own = sum.Answer(new Dictionary<string, string>(StringComparer.Ordinal) { ["wet"] = "6 mil", ["solids"] = "62 %" }, UnitSystem.Us).Result!;
        foreach (var answer in new[]
        {
            await server.Send(HttpMethod.Get, "/api/quick/film?wet=6+mil&solids=62%25"),
            await server.Send(HttpMethod.Post, "/api/quick/film", """{"wet":"6 mil","solids":"62 %"}"""),
        })
        {
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal(own.Rows.Select(r => r.Value), (await Body(answer)).GetProperty("numbers").EnumerateArray().Select(n => n.GetProperty("value").GetDouble()));
        }
    }

    [Fact]
    public async Task Readings_of_many_lines_go_in_the_body_and_come_back_hour_by_hour()
    {
        var answer = await server.Send(HttpMethod.Post, "/api/quick/day", """{"readings":"08:00 64 °F 55 %\n09:00 66 °F 97 %"}""");
        Assert.Equal(["wait", "noGo"], (await Body(answer)).GetProperty("hours").EnumerateArray().Select(h => h.GetProperty("verdict").GetString()!).Where(v => v != "unknown"));
    }

    [Theory]
    [InlineData("/api/quick/film?wet=6mil&solids=162%25", "solids")]
    [InlineData("/api/quick/film?wte=6mil&solids=62%25", "wte")]
    [InlineData("/api/quick/dew-point?air=20+C&dewPoint=25+C", "dewPoint")]
    public async Task What_cannot_be_used_is_a_problem_at_its_field(string address, string field)
    {
        var answer = await server.Send(HttpMethod.Get, address);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains((await Body(answer)).GetProperty("faults").EnumerateArray(), f => f.GetProperty("path").GetString() == field);
    }

    [Fact]
    public async Task A_sum_that_is_not_there_is_a_problem() =>
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/quick/flim")).StatusCode);
}
