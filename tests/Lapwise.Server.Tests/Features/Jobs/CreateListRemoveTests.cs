using System.Net;
using Lapwise.Core.Jobs;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Jobs;

public sealed class CreateListRemoveTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task A_created_job_is_listed_first_can_be_read_at_its_address_and_taken_out_at_its_version()
    {
        var created = await server.Send(HttpMethod.Post, "/api/jobs", Json(new JobDocument { Name = "Vanity" }));
        Assert.Equal(HttpStatusCode.Created, created.StatusCode);
        var address = created.Headers.Location!.ToString();

        var first = (await Body(await server.Send(HttpMethod.Get, "/api/jobs")))[0];
        Assert.Equal("Vanity", first.GetProperty("name").GetString());
        Assert.EndsWith(first.GetProperty("id").GetString()!, address, StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.PreconditionRequired, (await server.Send(HttpMethod.Delete, address)).StatusCode);
        Assert.Equal(HttpStatusCode.PreconditionFailed, (await server.Send(HttpMethod.Delete, address, ifMatch: "7")).StatusCode);
        var removed = await server.Send(HttpMethod.Delete, address, ifMatch: "1");
        Assert.Equal("Vanity", (await Body(removed)).GetProperty("name").GetString());
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, address)).StatusCode);
    }

    [Fact]
    public async Task An_unknown_address_of_the_api_answers_a_problem_and_never_the_page()
    {
        var answer = await server.Send(HttpMethod.Get, "/api/nothing/here");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task A_request_that_names_another_host_is_turned_away()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/jobs") { Headers = { Host = "shop.example" } };
        Assert.Equal(HttpStatusCode.BadRequest, (await server.Http.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task Every_answer_says_the_programs_version()
    {
        var answer = await server.Send(HttpMethod.Get, "/api/jobs");
        Assert.Matches(@"^\d+\.\d+\.\d+$", answer.Headers.GetValues("Lapwise-Version").Single());
    }

    [Fact]
    public async Task The_api_describes_itself_with_every_action_named()
    {
        var document = await Body(await server.Send(HttpMethod.Get, "/api/openapi.json"));
        var actions = document.GetProperty("paths").EnumerateObject()
            .SelectMany(path => path.Value.EnumerateObject().Select(method => method.Value))
            .ToList();
        Assert.NotEmpty(actions);
        Assert.All(actions, a => Assert.True(a.TryGetProperty("operationId", out _) && a.TryGetProperty("summary", out _)));
    }

    [Fact]
    public void It_listens_on_this_machine_only() => Assert.Equal("127.0.0.1", server.Http.BaseAddress!.Host);
}
