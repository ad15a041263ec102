using System.Net;
using System.Text.Json;
using Lapwise.Core.Jobs;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Jobs;

public sealed class SaveJobTests(RunningServer server) : IClassFixture<RunningServer>
{
    private static readonly JobDocument Kitchen = new()
    {
        Name = "Hollin Mill kitchen — Añón",
        Crew = [new PersonDocument { Name = "Ada" }],
        Tops = [new TopDocument { Name = "Run", Outline = new OutlineDocument { Length = "96 1/2 in", Depth = "8' 4-1/4\"" } }],
        Room = new RoomDocument { Air = "not a number", Humidity = "140 %" },
    };

    [Fact]
    public async Task A_job_comes_back_exactly_as_it_was_entered_faults_and_all()
    {
        var saved = await server.Send(HttpMethod.Put, "/api/jobs/round-trip", Json(Kitchen), ifNone: true);
        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);

        await server.Restart();
        var read = await server.Send(HttpMethod.Get, "/api/jobs/round-trip");
        var back = JsonSerializer.Deserialize(await read.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), JobJson.Default.JobDocument)!;
        Assert.Equal(Json(Kitchen), Json(back));
        Assert.Equal("1", VersionOf(read));
    }

    [Fact]
    public async Task Of_two_savers_from_one_version_the_second_is_told_and_nothing_is_overwritten()
    {
        await server.Send(HttpMethod.Put, "/api/jobs/clash", Json(Kitchen), ifNone: true);
        var first = await server.Send(HttpMethod.Put, "/api/jobs/clash", Json(Kitchen with { Name = "first" }), ifMatch: "1");
        var second = await server.Send(HttpMethod.Put, "/api/jobs/clash", Json(Kitchen with { Name = "second" }), ifMatch: "1");

        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        Assert.Equal(HttpStatusCode.PreconditionFailed, second.StatusCode);
        var problem = await Body(second);
        Assert.Equal("urn:lapwise:problem:clash", problem.GetProperty("type").GetString());
        Assert.Equal(2, problem.GetProperty("version").GetInt64());
        Assert.Equal("first", (await Body(await server.Send(HttpMethod.Get, "/api/jobs/clash"))).GetProperty("name").GetString());
    }

    [Fact]
    public async Task Many_savers_at_once_from_one_version_let_exactly_one_through()
    {
        await server.Send(HttpMethod.Put, "/api/jobs/race", Json(Kitchen), ifNone: true);
        var answers = await Task.WhenAll(Enumerable.Range(0, 12).Select(i =>
            server.Send(HttpMethod.Put, "/api/jobs/race", Json(Kitchen with { Name = $"saver {i}" }), ifMatch: "1")));

        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
        Assert.Equal(11, answers.Count(a => a.StatusCode == HttpStatusCode.PreconditionFailed));
        Assert.Equal("2", VersionOf(await server.Send(HttpMethod.Get, "/api/jobs/race")));
    }

    [Fact]
    public async Task A_new_job_under_a_taken_id_is_told_and_the_old_one_stays()
    {
        await server.Send(HttpMethod.Put, "/api/jobs/taken", Json(Kitchen), ifNone: true);
        var again = await server.Send(HttpMethod.Put, "/api/jobs/taken", Json(Kitchen with { Name = "other" }), ifNone: true);
        Assert.Equal(HttpStatusCode.PreconditionFailed, again.StatusCode);
        Assert.Equal(Kitchen.Name, (await Body(await server.Send(HttpMethod.Get, "/api/jobs/taken"))).GetProperty("name").GetString());
    }

    [Fact]
    public async Task A_save_without_a_version_is_refused()
    {
        var answer = await server.Send(HttpMethod.Put, "/api/jobs/versionless", Json(Kitchen));
        Assert.Equal(HttpStatusCode.PreconditionRequired, answer.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/jobs/versionless")).StatusCode);
    }

    [Theory]
    [InlineData("{\"lapwise\":99}", "lapwise", "VersionNotKnown")]
    [InlineData("{\"tops\":[{\"name\":3}]}", "tops[0].name", "NotADocument")]
    [InlineData("{\"roomm\":{}}", "roomm", "NotADocument")]
    [InlineData("{\"name\":\"half", "name", "NotADocument")]
    [InlineData("null", "", "NotADocument")]
    [InlineData("{\"units\":7}", "units", "NotADocument")]
    public async Task A_body_that_is_no_job_document_is_a_problem_with_its_path(string body, string path, string code)
    {
        var answer = await server.Send(HttpMethod.Put, "/api/jobs/bad", body, ifNone: true);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var fault = (await Body(answer)).GetProperty("faults")[0];
        Assert.Equal(code, fault.GetProperty("code").GetString());
        Assert.Equal(path, fault.GetProperty("path").GetString());
    }

    [Fact]
    public async Task A_refusal_is_said_in_the_language_asked_for()
    {
        var answer = await server.Send(HttpMethod.Put, "/api/jobs/bad", "{\"lapwise\":99}", ifNone: true, language: "es-MX,es;q=0.9");
        Assert.Contains("No se conoce la versión 99", (await Body(answer)).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_document_nested_a_thousand_deep_is_refused_at_once()
    {
        var deep = string.Concat(Enumerable.Repeat("{\"tops\":[", 1000));
        var answer = await server.Send(HttpMethod.Put, "/api/jobs/deep", deep, ifNone: true);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(50)]
    public async Task A_body_over_five_megabytes_is_refused_with_its_limit(int megabytes)
    {
        var large = "{\"name\":\"" + new string('x', megabytes * 1024 * 1024) + "\"}";
        HttpResponseMessage answer;
        try
        {
            answer = await server.Send(HttpMethod.Put, "/api/jobs/large", large, ifNone: true);
        }
        catch (HttpRequestException)
        {
            // The server answered and closed while the body was still being sent; that too is a refusal.
            answer = new HttpResponseMessage(HttpStatusCode.RequestEntityTooLarge);
        }
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/jobs/large")).StatusCode);
    }

    [Theory]
    [InlineData("with%20space")]
    [InlineData("..%2Fup")]
    [InlineData("0123456789012345678901234567890123456789012345678901234567890123456789")]
    public async Task An_id_that_is_not_plain_is_refused(string id) =>
        Assert.Equal(HttpStatusCode.BadRequest, (await server.Send(HttpMethod.Put, "/api/jobs/" + id, Json(Kitchen), ifNone: true)).StatusCode);
}
