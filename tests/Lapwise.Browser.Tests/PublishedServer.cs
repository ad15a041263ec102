using System.Diagnostics;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using Lapwise.Shared;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Lapwise.Browser.Tests.PublishedServer))]
// One server for all, and one test takes it away for a while.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]

namespace Lapwise.Browser.Tests;

/// <summary>The server as it is published, in a process of its own on a database of its own, and one browser for all tests.</summary>
public sealed class PublishedServer : IAsyncLifetime
{
    private static readonly string[] BrowserSwitches =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    /// <summary>While writing a page, LAPWISE_AS_BUILT=1 takes the server's Debug build: minutes sooner, slower to plan, never what is shipped.</summary>
    private static readonly bool AsBuilt = Environment.GetEnvironmentVariable("LAPWISE_AS_BUILT") == "1";

    private readonly string data = Path.Combine(Path.GetTempPath(), "lapwise-browser-" + Guid.NewGuid().ToString("N"));
    private readonly int port = FreePorts.InARow(1);
    private string app = "";
    private Process? server;
    private IPlaywright playwright = null!;
    private IBrowser browser = null!;

    /// <summary>Port of the encrypted door for phones; the next one hands out the certificate.</summary>
    public int PhonePort { get; } = FreePorts.InARow(2);

    /// <summary>Whether the server under test is the published one, with the worker that keeps the page on the device.</summary>
    public static bool IsPublished => !AsBuilt;

    public string Address => $"http://127.0.0.1:{port}";
    public HttpClient Http { get; } = new();

    public async ValueTask InitializeAsync()
    {
        Http.BaseAddress = new Uri(Address);
        app = AsBuilt ? Path.Combine(RepositoryRoot(), "src", "Lapwise.Server", "bin", "Debug", "net10.0") : (await Run("bash", [Path.Combine(RepositoryRoot(), "eng", "publish")])).Trim();
        await StartServer();
        // The samples are made in the language of whoever asks first: here in English, whichever test comes first.
        await Http.GetStringAsync("/api/products");
        // A busy machine is slow, not wrong.
        Assertions.SetDefaultExpectTimeout(15_000);
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = BrowserSwitches });
    }

    /// <summary>A browser window with a storage of its own.</summary>
    public Task<IBrowserContext> Window(int width = 1440, int height = 900, string locale = "en-US", string? address = null, string? zone = null) =>
        browser.NewContextAsync(new() { BaseURL = address ?? Address, ViewportSize = new() { Width = width, Height = height }, Locale = locale, TimezoneId = zone });

    public Task<IBrowser> AnotherBrowser(params string[] switches) =>
        playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = [.. BrowserSwitches, .. switches] });

    /// <summary>A copy of the sample job under a new id, so that tests do not meet in one job; in other air or under another name where one is given.</summary>
    public async Task<string> CopyOfDemo(string? humidity = null, string? name = null, Action<JsonNode>? change = null)
    {
        var id = "t" + Guid.NewGuid().ToString("N");
        var demo = JsonNode.Parse(await Http.GetStringAsync("/api/jobs/demo", TestContext.Current.CancellationToken))!;
        if (humidity is not null) demo["room"]!["humidity"] = humidity;
        if (name is not null) demo["name"] = name;
        change?.Invoke(demo);
        using var request = new HttpRequestMessage(HttpMethod.Put, "/api/jobs/" + id) { Content = new StringContent(demo.ToJsonString(), Encoding.UTF8, "application/json") };
        request.Headers.IfNoneMatch.Add(EntityTagHeaderValue.Any);
        (await Http.SendAsync(request, TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();
        return id;
    }

    /// <summary>The shop's rates as nobody has entered them: one test keeps its own, and which comes first cannot be told.</summary>
    public async Task ForgetRates()
    {
        using var now = await Http.GetAsync("/api/rates", TestContext.Current.CancellationToken);
        if (now.Headers.ETag is not { } version) return;
        using var request = new HttpRequestMessage(HttpMethod.Put, "/api/rates") { Content = new StringContent("{}", Encoding.UTF8, "application/json") };
        request.Headers.IfMatch.Add(version);
        (await Http.SendAsync(request, TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();
    }

    public async Task StartServer()
    {
        server = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(app, "Lapwise.Server.dll")])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
            Environment =
            {
                ["LAPWISE_DATA"] = data,
                ["LAPWISE_PORT"] = port.ToString(System.Globalization.CultureInfo.InvariantCulture),
                ["LAPWISE_PHONE_PORT"] = PhonePort.ToString(System.Globalization.CultureInfo.InvariantCulture),
                ["ASPNETCORE_ENVIRONMENT"] = AsBuilt ? "Development" : "Production",
            },
        })!;
        while (await server.StandardOutput.ReadLineAsync() is { } line)
            if (line.Contains(Address, StringComparison.Ordinal)) return;
        throw new InvalidOperationException("The server stopped before it was ready.");
    }

    public async Task StopServer()
    {
        server!.Kill();
        await server.WaitForExitAsync();
        server.Dispose();
        server = null;
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        playwright?.Dispose();
        Http.Dispose();
        if (server is not null) await StopServer();
        if (Directory.Exists(data)) Directory.Delete(data, recursive: true);
    }

    private static string RepositoryRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Lapwise.slnx"))) folder = folder.Parent!;
        return folder.FullName;
    }

    private static async Task<string> Run(string program, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 ? said : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}.");
    }
}
