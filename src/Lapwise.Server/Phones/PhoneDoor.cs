using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Lapwise.Server.Phones;

/// <summary>
/// The way in for phones on the same network: by HTTPS, closed until somebody at this computer opens it. While a code is on
/// show a second door without encryption hands out one thing, the shop's certificate, because a phone that does not trust it
/// yet cannot fetch it any other way.
/// </summary>
public sealed class PhoneDoor(ServerSettings settings, PhoneBook book, PairingCode code, TimeProvider time)
{
    private readonly DoorConfiguration configuration = new();
    private ShopAuthority? authority;

    /// <summary>Made when the door is first opened: a shop that lets no phone in has no key to lose.</summary>
    public ShopAuthority Authority => authority ??= ShopAuthority.At(Path.Combine(settings.PhonesFolder, "authority.p12"), time);

    public int Port => settings.PhonePort;

    public int CertificatePort => settings.PhonePort + 1;

    public bool IsOpen => book.IsOpen;

    internal void AddTo(KestrelServerOptions kestrel)
    {
        var section = new ConfigurationBuilder().Add(configuration).Build();
        kestrel.Configure(section, reloadOnChange: true)
            .Endpoint("Phones", endpoint => endpoint.HttpsOptions.ServerCertificateSelector = (_, _) => Authority.For(LanNames.Now()));
        if (book.IsOpen) Listen();
    }

    /// <summary>Opens it, and says whether it could be: another program may use the port.</summary>
    public async Task<bool> Open(CancellationToken cancel)
    {
        book.IsOpen = true;
        Listen();
        if (await Answers(Port, cancel)) return true;
        Close();
        return false;
    }

    public void Close()
    {
        code.Hide();
        book.IsOpen = false;
        configuration.Set([]);
    }

    /// <summary>Shows a new code, with the certificate to be had beside it.</summary>
    public async Task ShowCode(CancellationToken cancel)
    {
        code.Show();
        Listen();
        await Answers(CertificatePort, cancel);
    }

    private void Listen() => configuration.Set(new Dictionary<string, string?>(StringComparer.OrdinalIgnoreCase)
    {
        ["Endpoints:Phones:Url"] = "https://*:" + Port.ToString(CultureInfo.InvariantCulture),
        ["Endpoints:Phones:Protocols"] = "Http1AndHttp2",
        ["Endpoints:Certificate:Url"] = "http://*:" + CertificatePort.ToString(CultureInfo.InvariantCulture),
    });

    private static async Task<bool> Answers(int port, CancellationToken cancel)
    {
        for (var tries = 0; tries < 30; tries++)
        {
            try
            {
                using var knock = new TcpClient();
                await knock.ConnectAsync(IPAddress.Loopback, port, cancel);
                return true;
            }
            catch (SocketException)
            {
                await Task.Delay(100, cancel);
            }
        }

        return false;
    }

    /// <summary>What the server listens on beside loopback; a change takes hold while it runs.</summary>
    private sealed class DoorConfiguration : ConfigurationProvider, IConfigurationSource
    {
        public IConfigurationProvider Build(IConfigurationBuilder builder) => this;

        public void Set(Dictionary<string, string?> endpoints)
        {
            Data = endpoints;
            OnReload();
        }
    }
}
