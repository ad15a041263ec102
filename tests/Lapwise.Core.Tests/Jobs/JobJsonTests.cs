using System.Text.Json;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

public sealed class JobJsonTests
{
    [Fact]
    public void A_member_left_out_keeps_its_default()
    {
        var document = JsonSerializer.Deserialize("{}", JobJson.Default.JobDocument)!;

        Assert.NotNull(document.Room);
        Assert.NotNull(document.Tops);
        Assert.Equal(JobDocument.CurrentVersion, document.Lapwise);
    }
}
