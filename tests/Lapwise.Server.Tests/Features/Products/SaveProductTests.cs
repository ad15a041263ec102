using System.Net;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Products;

public sealed class SaveProductTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task A_coating_is_changed_at_its_version_and_under_its_own_id_only()
    {
        const string address = "/api/products/clear-fast-two-part";
        var read = await server.Send(HttpMethod.Get, address);
        var product = await read.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.PreconditionRequired, (await server.Send(HttpMethod.Put, address, product)).StatusCode);
        Assert.Equal(HttpStatusCode.PreconditionFailed, (await server.Send(HttpMethod.Put, address, product, ifMatch: "9")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await server.Send(HttpMethod.Put, address, product, ifMatch: VersionOf(read))).StatusCode);

        var other = await server.Send(HttpMethod.Put, "/api/products/other", product, ifNone: true);
        Assert.Equal(HttpStatusCode.BadRequest, other.StatusCode);
        Assert.Equal("OtherId", (await Body(other)).GetProperty("faults")[0].GetProperty("code").GetString());
    }
}
