using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>From the shop's screen to a phone that works by HTTPS, and out again.</summary>
public sealed class PhonesTests(PublishedServer server)
{
    [Fact]
    public async Task A_phone_is_let_in_by_the_code_on_the_shops_screen_works_by_https_and_is_shut_out_again()
    {
        await using var shopWindow = await server.Window();
        var shop = await shopWindow.Open("/phones");
        await Expect(shop.GetByRole(AriaRole.Heading, new() { Name = "Phones on this network" })).ToBeVisibleAsync();
        await shop.GetByRole(AriaRole.Button, new() { Name = "Let a phone in" }).ClickAsync();
        await shop.GetByRole(AriaRole.Button, new() { Name = "Show a code for one more phone" }).ClickAsync();
        var code = (await shop.Locator(".pair-code").InnerTextAsync()).Replace(" ", "", StringComparison.Ordinal);
        Assert.Empty((await shop.RunAxe()).Violations.Select(v => v.Id));

        // The certificate on show is vouched for by the authority that phones install; the phone's browser here is told its key,
        // because a test may not install an authority into this machine.
        var shown = await CertificateShown();
        using (var authority = X509CertificateLoader.LoadCertificate(await server.Http.GetByteArrayAsync($"http://127.0.0.1:{server.PhonePort + 1}/lapwise-shop.crt", TestContext.Current.CancellationToken)))
        using (var chain = new X509Chain())
        {
            chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
            chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
            chain.ChainPolicy.CustomTrustStore.Add(authority);
            Assert.True(chain.Build(shown));
        }

        var trusted = Convert.ToBase64String(SHA256.HashData(shown.PublicKey.ExportSubjectPublicKeyInfo()));
        await using var browser = await server.AnotherBrowser("--ignore-certificate-errors-spki-list=" + trusted);
        await using var phoneWindow = await browser.NewContextAsync(new() { BaseURL = $"https://127.0.0.1:{server.PhonePort}", ViewportSize = new() { Width = 390, Height = 844 }, Locale = "es-MX" });
        var phone = await phoneWindow.NewPageAsync();
        phone.SetDefaultTimeout(30_000);
        Assert.Equal(401, (await phone.GotoAsync("/jobs/demo"))!.Status);
        Assert.Equal(401, (await phone.APIRequest.GetAsync("/api/jobs", new() { IgnoreHTTPSErrors = true })).Status);
        Assert.Empty((await phone.RunAxe()).Violations.Select(v => v.Id));
        await phone.GetByLabel("Código del computador").FillAsync("12");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Dar acceso" }).ClickAsync();
        await Expect(phone.GetByRole(AriaRole.Alert)).ToContainTextAsync("no es el código");
        await phone.GetByLabel("Código del computador").FillAsync(code);
        await phone.GetByLabel("Cómo se llama").FillAsync("Ada");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Dar acceso" }).ClickAsync();
        await Expect(phone.Locator(".jobs")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        Assert.True(await phone.EvaluateAsync<bool>("isSecureContext && 'serviceWorker' in navigator"));

        // What the phone types arrives.
        var id = await server.CopyOfDemo();
        await phone.GotoAsync($"/jobs/{id}/measure");
        await phone.Locator("#at-tops-0--thickness").FillAsync("45 mm", new() { Timeout = Pages.FirstStartMs });
        await phone.Kept("Guardado");
        await Expect(phone.Locator(".kept.is-saved")).ToBeVisibleAsync();
        Assert.Contains("45 mm", await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken), StringComparison.Ordinal);

        // It may not let others in, and once it is shut out it keeps what is on it and gets no more.
        await phone.GotoAsync("/phones");
        await Expect(phone.GetByText("Solo el propio computador del taller")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await phone.GotoAsync("/");
        await Expect(phone.Locator(".jobs")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await shop.GetByRole(AriaRole.Button, new() { Name = "Shut out Ada" }).ClickAsync();
        await phone.Locator($"a[href='jobs/{id}']").ClickAsync();
        await phone.Locator("#at-tops-0--thickness").FillAsync("46 mm");
        await phone.Kept("no da acceso");
        await shop.GetByRole(AriaRole.Button, new() { Name = "Close the door" }).ClickAsync();
        await Expect(shop.GetByRole(AriaRole.Button, new() { Name = "Let a phone in" })).ToBeVisibleAsync();
        await phoneWindow.CloseAsync();
    }

    private async Task<X509Certificate2> CertificateShown()
    {
        using var connection = new TcpClient();
        await connection.ConnectAsync(IPAddress.Loopback, server.PhonePort, TestContext.Current.CancellationToken);
        X509Certificate2? shown = null;
        // Seen and turned away: nothing is said to a server whose authority is not known here.
        await using var tls = new SslStream(connection.GetStream(), leaveInnerStreamOpen: false, (_, certificate, _, _) =>
        {
            shown = X509CertificateLoader.LoadCertificate(certificate!.GetRawCertData());
            return false;
        });
        await Assert.ThrowsAsync<AuthenticationException>(() => tls.AuthenticateAsClientAsync("127.0.0.1"));
        return shown!;
    }
}
