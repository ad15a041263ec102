using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json;
using Lapwise.Server.Phones;
using Lapwise.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Lapwise.Server.Tests.Phones;

/// <summary>The real door by HTTPS: closed at first, and behind it nothing without a code from this computer.</summary>
public sealed class PhoneDoorTests : IAsyncLifetime
{
    private readonly string folder = Path.Combine(Path.GetTempPath(), "lapwise-" + Guid.NewGuid().ToString("N"));
    private readonly SetClock clock = new();
    private readonly int phonePort = FreePorts.InARow(2);
    private WebApplication app = null!;
    private HttpClient shop = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        app = LapwiseServer.Build(new ServerSettings(folder, 0, phonePort), clock);
        await LapwiseServer.Start(app, Cancel);
        shop = new HttpClient { BaseAddress = new Uri(LapwiseServer.AddressOf(app)) };
    }

    public async ValueTask DisposeAsync()
    {
        shop.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Nobody_listens_until_the_door_is_opened_and_after_it_is_closed()
    {
        Assert.False(await Listens(phonePort));
        Assert.False(File.Exists(Path.Combine(folder, "phones", "authority.p12")));
        await Open();
        Assert.True(await Listens(phonePort));
        await shop.DeleteAsync("/api/phones/door", Cancel);
        for (var tries = 0; tries < 50 && await Listens(phonePort); tries++) await Task.Delay(100, Cancel);
        Assert.False(await Listens(phonePort));
    }

    [Fact]
    public async Task The_right_code_lets_a_device_in_and_taking_it_off_the_list_shuts_it_out()
    {
        await Open();
        using var phone = Phone();
        Assert.Equal(HttpStatusCode.SeeOther, (await Pair(phone, await Code())).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("/api/jobs", Cancel)).StatusCode);

        var id = (await State()).GetProperty("phones")[0].GetProperty("id").GetString();
        Assert.Equal(HttpStatusCode.OK, (await shop.DeleteAsync("/api/phones/" + id, Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.GetAsync("/api/jobs", Cancel)).StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/jobs/demo")]
    [InlineData("/index.html")]
    [InlineData("/css/page.css")]
    [InlineData("/api/jobs")]
    [InlineData("/api/products")]
    [InlineData("/api/openapi.json")]
    [InlineData("/api/phones")]
    [InlineData("/PAIR/../api/jobs")]
    [InlineData("//pair")]
    [InlineData("/pair/")]
    [InlineData("/pair%2f..%2fapi/jobs")]
    public async Task Without_a_token_every_path_but_the_pairing_page_is_turned_away(string path)
    {
        await Open();
        using var phone = Phone();
        var address = new Uri($"https://127.0.0.1:{phonePort}{path}");
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.GetAsync(address, Cancel)).StatusCode);
        using var forged = new HttpRequestMessage(HttpMethod.Get, address);
        forged.Headers.Add("Cookie", "__Host-lapwise-device=" + new string('0', 64));
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.SendAsync(forged, Cancel)).StatusCode);
    }

    [Fact]
    public async Task The_calendars_private_address_and_nothing_beside_it_is_answered_without_a_token()
    {
        await Open();
        using var calendar = Phone();
        async Task<string> Address(HttpMethod method) => new Uri(JsonDocument.Parse(await (await shop.SendAsync(new HttpRequestMessage(method, "/api/days/feed"), Cancel)).Content.ReadAsStringAsync(Cancel)).RootElement.GetProperty("here").GetString()!).PathAndQuery;

        var first = await Address(HttpMethod.Post);
        Assert.Equal(first, await Address(HttpMethod.Get));
        Assert.Equal(HttpStatusCode.OK, (await calendar.GetAsync(first, Cancel)).StatusCode);
        foreach (var path in new[] { "/api/days", "/api/days/feed", "/api/days/settled", "/api/feed/../days/settled", "/api/feed/%2e%2e/jobs.ics", "/api/feed/", "/api/feed/.ics", "/api/jobs/demo/days.ics" })
            Assert.Equal(HttpStatusCode.Unauthorized, (await calendar.GetAsync(path, Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await calendar.PostAsync(first, null, Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await calendar.GetAsync($"/api/feed/{new string('0', 64)}.ics", Cancel)).StatusCode);

        var second = await Address(HttpMethod.Post);
        Assert.NotEqual(first, second);
        Assert.Equal(HttpStatusCode.NotFound, (await calendar.GetAsync(first, Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await calendar.GetAsync(second, Cancel)).StatusCode);
        await shop.DeleteAsync("/api/days/feed", Cancel);
        Assert.Equal(HttpStatusCode.NotFound, (await calendar.GetAsync(second, Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_code_is_good_for_five_tries_one_use_and_ten_minutes()
    {
        await Open();
        using var phone = Phone();
        var code = await Code();
        var wrong = code == "000000" ? "000001" : "000000";
        for (var i = 0; i < PairingCode.MostTries; i++) Assert.Equal(HttpStatusCode.Forbidden, (await Pair(phone, wrong)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await Pair(phone, code)).StatusCode);

        code = await Code();
        Assert.Equal(HttpStatusCode.SeeOther, (await Pair(phone, code)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await Pair(phone, code)).StatusCode);

        code = await Code();
        clock.Pass(PairingCode.Life - TimeSpan.FromSeconds(1));
        Assert.Equal(code, (await State()).GetProperty("code").GetString());
        // Setting the clock back buys no time.
        clock.SetBack(TimeSpan.FromHours(1));
        clock.Pass(TimeSpan.FromSeconds(2));
        Assert.Equal(HttpStatusCode.Forbidden, (await Pair(phone, code)).StatusCode);
        Assert.DoesNotContain((await phone.GetAsync("/pair", Cancel)).Headers, h => h.Key == "Set-Cookie");
    }

    [Fact]
    public async Task A_paired_device_may_not_let_others_in()
    {
        await Open();
        using var phone = Phone();
        await Pair(phone, await Code());
        Assert.Equal(HttpStatusCode.Forbidden, (await phone.GetAsync("/api/phones", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await phone.PostAsync("/api/phones/code", null, Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await phone.PostAsync("/API/Phones/code", null, Cancel)).StatusCode);
    }

    [Fact]
    public async Task Another_host_name_and_another_site_are_turned_away()
    {
        await Open();
        // This client is named for the wrong host on purpose, so it may not look at the certificate's names.
        using var handler = new SocketsHttpHandler();
        handler.SslOptions.RemoteCertificateValidationCallback = (_, certificate, _, _) => certificate is not null;
        using var phone = new HttpClient(handler) { BaseAddress = new Uri($"https://127.0.0.1:{phonePort}") };
        using var renamed = new HttpRequestMessage(HttpMethod.Get, "/pair") { Headers = { Host = "shop.example:" + phonePort } };
        Assert.Equal(HttpStatusCode.BadRequest, (await phone.SendAsync(renamed, Cancel)).StatusCode);
        using var renamedHere = new HttpRequestMessage(HttpMethod.Get, "/api/jobs") { Headers = { Host = "shop.example" } };
        Assert.Equal(HttpStatusCode.BadRequest, (await shop.SendAsync(renamedHere, Cancel)).StatusCode);
        foreach (var (header, value) in new[] { ("Sec-Fetch-Site", "cross-site"), ("Origin", "https://shop.example") })
        {
            using var foreign = new HttpRequestMessage(HttpMethod.Post, "/api/phones/code");
            foreign.Headers.Add(header, value);
            Assert.Equal(HttpStatusCode.Forbidden, (await shop.SendAsync(foreign, Cancel)).StatusCode);
        }
    }

    [Fact]
    public async Task The_certificate_is_handed_out_only_while_a_code_is_on_show_and_nothing_else_is()
    {
        await Open();
        using var stranger = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{phonePort + 1}") };
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.GetAsync("/lapwise-shop.crt", Cancel)).StatusCode);
        await Code();
        using var authority = X509CertificateLoader.LoadCertificate(await stranger.GetByteArrayAsync("/lapwise-shop.crt", Cancel));
        Assert.False(authority.HasPrivateKey);
        Assert.Contains((await State()).GetProperty("fingerprint").GetString()!, await stranger.GetStringAsync("/", Cancel), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.GetAsync("/api/jobs", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.GetAsync("/pair", Cancel)).StatusCode);
    }

    [Fact]
    public async Task Devices_and_the_authority_outlive_a_restart_in_files_of_the_owner_only()
    {
        await Open();
        using var phone = Phone();
        await Pair(phone, await Code());
        var before = (await State()).GetProperty("fingerprint").GetString();
        foreach (var file in Directory.GetFiles(Path.Combine(folder, "phones")))
            if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));

        await app.DisposeAsync();
        await InitializeAsync();
        Assert.Equal(before, (await State()).GetProperty("fingerprint").GetString());
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("/api/jobs", Cancel)).StatusCode);
    }

    [Fact]
    public async Task Every_answer_carries_the_policy_that_lets_only_this_servers_files_run()
    {
        await Open();
        using var phone = Phone();
        foreach (var answer in new[] { await shop.GetAsync("/api/jobs", Cancel), await shop.GetAsync("/api/nothing", Cancel), await phone.GetAsync("/pair", Cancel), await phone.GetAsync("/", Cancel) })
        {
            var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("'unsafe-eval'", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        }
    }

    [Theory]
    [InlineData("7407", "0", 7407, 7408)]
    [InlineData("7408", null, 7408, 7409)]
    [InlineData("7409", "7408", 7409, 7410)]
    [InlineData("0", "9000", 0, 9000)]
    [InlineData("65534", "65534", 65534, 7408)]
    public void The_ports_of_the_doors_never_meet(string port, string? phonePort, int expected, int expectedForPhones)
    {
        var before = (Environment.GetEnvironmentVariable("LAPWISE_PORT"), Environment.GetEnvironmentVariable("LAPWISE_PHONE_PORT"));
        try
        {
            Environment.SetEnvironmentVariable("LAPWISE_PORT", port);
            Environment.SetEnvironmentVariable("LAPWISE_PHONE_PORT", phonePort);
            var settings = ServerSettings.FromEnvironment();
            Assert.Equal((expected, expectedForPhones), (settings.Port, settings.PhonePort));
        }
        finally
        {
            Environment.SetEnvironmentVariable("LAPWISE_PORT", before.Item1);
            Environment.SetEnvironmentVariable("LAPWISE_PHONE_PORT", before.Item2);
        }
    }

    private async Task Open() => (await shop.PutAsync("/api/phones/door", null, Cancel)).EnsureSuccessStatusCode();

    private async Task<string> Code()
    {
        using var answer = await shop.PostAsync("/api/phones/code", null, Cancel);
        return JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancel)).RootElement.GetProperty("code").GetString()!;
    }

    private async Task<JsonElement> State() => JsonDocument.Parse(await shop.GetStringAsync("/api/phones", Cancel)).RootElement;

    private static async Task<HttpResponseMessage> Pair(HttpClient phone, string code) =>
        await phone.PostAsync("/pair", new FormUrlEncodedContent([new("code", code), new("name", "Test phone")]), Cancel);

    /// <summary>A device that trusts the shop's authority and nothing else, as a phone does after the first steps.</summary>
    private HttpClient Phone()
    {
        var authority = app.Services.GetRequiredService<PhoneDoor>().Authority.Certificate;
        var handler = new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() };
        handler.SslOptions.CertificateChainPolicy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        handler.SslOptions.CertificateChainPolicy.CustomTrustStore.Add(X509CertificateLoader.LoadCertificate(authority));
        var phone = new HttpClient(handler) { BaseAddress = new Uri($"https://127.0.0.1:{phonePort}") };
        phone.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        return phone;
    }

    private static async Task<bool> Listens(int port)
    {
        try
        {
            using var knock = new TcpClient();
            await knock.ConnectAsync(IPAddress.Loopback, port, Cancel);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}

/// <summary>A clock that stands still but for what the test lets pass, so a slow machine changes nothing; time that passes cannot be set back.</summary>
internal sealed class SetClock : TimeProvider
{
    private readonly DateTimeOffset started = System.GetUtcNow();
    private TimeSpan wall;
    private TimeSpan passed;

    public override DateTimeOffset GetUtcNow() => started + wall + passed;
    public override long GetTimestamp() => (long)(passed.TotalSeconds * TimestampFrequency);

    public void Pass(TimeSpan time) => passed += time;
    public void SetBack(TimeSpan time) => wall -= time;
}
