using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Lapwise.Core.Jobs;
using Microsoft.AspNetCore.Builder;

namespace Lapwise.Server.Tests;

/// <summary>The real server on a free loopback port, on a database file of its own that goes with it.</summary>
public sealed class RunningServer : IAsyncLifetime
{
    private readonly string folder = Path.Combine(Path.GetTempPath(), "lapwise-" + Guid.NewGuid().ToString("N"));
    private WebApplication app = null!;

    public HttpClient Http { get; private set; } = null!;
    public ServerSettings Settings => new(folder, 0);

    /// <summary>For a test that must be the first to touch the database.</summary>
    public static async Task<RunningServer> OnNewDatabase()
    {
        var server = new RunningServer();
        await server.InitializeAsync();
        return server;
    }

    public async ValueTask InitializeAsync()
    {
        app = LapwiseServer.Build(Settings, TimeProvider.System);
        await LapwiseServer.Start(app, CancellationToken.None);
        Http = new HttpClient { BaseAddress = new Uri(LapwiseServer.AddressOf(app)) };
    }

    /// <summary>Stops and starts again on the same file.</summary>
    public async Task Restart()
    {
        await app.DisposeAsync();
        await InitializeAsync();
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Sends a body with at most one condition.</summary>
    public async Task<HttpResponseMessage> Send(HttpMethod method, string address, string? body = null, string? ifMatch = null, bool ifNone = false, string language = "en")
    {
        using var request = new HttpRequestMessage(method, address);
        if (body is not null) request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        if (ifMatch is not null) request.Headers.IfMatch.Add(new EntityTagHeaderValue($"\"{ifMatch}\""));
        if (ifNone) request.Headers.IfNoneMatch.Add(EntityTagHeaderValue.Any);
        request.Headers.AcceptLanguage.ParseAdd(language);
        return await Http.SendAsync(request, TestContext.Current.CancellationToken);
    }

    public static string Json(JobDocument job) => JsonSerializer.Serialize(job, JobJson.Default.JobDocument);

    public static async Task<JsonElement> Body(HttpResponseMessage answer) =>
        JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;

    public static string VersionOf(HttpResponseMessage answer) => answer.Headers.ETag!.Tag.Trim('"');
}
