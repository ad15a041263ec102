using System.Net;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Products;

public sealed class RemoveProductTests(RunningServer server) : IClassFixture<RunningServer>
{
    private const string Address = "/api/products/clear-fast-two-part";

    [Fact]
    public async Task A_coating_is_taken_off_the_list_at_its_version_once_and_can_be_put_back_from_the_answer()
    {
        var version = VersionOf(await server.Send(HttpMethod.Get, Address));
        Assert.Equal(HttpStatusCode.PreconditionRequired, (await server.Send(HttpMethod.Delete, Address)).StatusCode);
        Assert.Equal(HttpStatusCode.PreconditionFailed, (await server.Send(HttpMethod.Delete, Address, ifMatch: "99")).StatusCode);
        Assert.Contains("clear-fast-two-part", await Ids());

        var removed = await server.Send(HttpMethod.Delete, Address, ifMatch: version);
        Assert.Equal(HttpStatusCode.OK, removed.StatusCode);
        Assert.DoesNotContain("clear-fast-two-part", await Ids());
        // Asked twice, as by a phone whose first answer was lost on the way.
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Delete, Address, ifMatch: version)).StatusCode);

        var product = await removed.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Created, (await server.Send(HttpMethod.Put, Address, product, ifNone: true)).StatusCode);
        Assert.Contains("clear-fast-two-part", await Ids());
    }

    [Fact]
    public async Task One_that_was_never_there_is_not_found()
    {
        var answer = await server.Send(HttpMethod.Delete, "/api/products/no-such-coating", ifMatch: "1");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    /// <summary>A removal asked for without reception arrives after somebody else changed the coating: it stays as that one left it.</summary>
    [Fact]
    public async Task A_removal_that_arrives_late_does_not_take_away_what_was_changed_meanwhile()
    {
        const string address = "/api/products/base-decorative";
        var read = await server.Send(HttpMethod.Get, address);
        var seen = VersionOf(read);
        var changed = (await read.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Replace("(invented)", "(changed)", StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await server.Send(HttpMethod.Put, address, changed, ifMatch: seen)).StatusCode);

        Assert.Equal(HttpStatusCode.PreconditionFailed, (await server.Send(HttpMethod.Delete, address, ifMatch: seen)).StatusCode);
        Assert.Contains("(changed)", (await Body(await server.Send(HttpMethod.Get, address))).GetProperty("name").GetString(), StringComparison.Ordinal);
    }

    private async Task<IEnumerable<string?>> Ids() => (await Body(await server.Send(HttpMethod.Get, "/api/products"))).EnumerateArray().Select(p => p.GetProperty("id").GetString());
}
