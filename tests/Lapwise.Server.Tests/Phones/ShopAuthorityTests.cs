using System.Diagnostics;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Lapwise.Server.Phones;

namespace Lapwise.Server.Tests.Phones;

/// <summary>The shop's authority, checked by OpenSSL where it is installed: an implementation that is not .NET's.</summary>
public sealed class ShopAuthorityTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("lapwise-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void It_vouches_for_this_machine_on_its_network()
    {
        using var authority = ShopAuthority.At(Path.Combine(folder, "a.p12"), TimeProvider.System);
        var names = LanNames.Now();
        var leaf = authority.For(names);
        Assert.True(leaf.MatchesHostname("localhost"));
        Assert.True(leaf.NotAfter - leaf.NotBefore <= TimeSpan.FromDays(398));
        Assert.Same(leaf, authority.For(names));
        Assert.Equal("", Verify(authority.Certificate, leaf));
    }

    /// <summary>Name constraints, RFC 5280, 4.2.1.10: what a stolen key could sign for elsewhere is not believed.</summary>
    [Theory]
    [InlineData("DNS:bank.example")]
    [InlineData("IP:8.8.8.8")]
    public void It_cannot_vouch_for_anybody_else(string name)
    {
        var path = Path.Combine(folder, "a.p12");
        using var authority = ShopAuthority.At(path, TimeProvider.System);
        using var stolen = X509CertificateLoader.LoadPkcs12FromFile(path, null);
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=not here", key, HashAlgorithmName.SHA256);
        var also = new SubjectAlternativeNameBuilder();
        if (name.StartsWith("DNS:", StringComparison.Ordinal)) also.AddDnsName(name[4..]);
        else also.AddIpAddress(IPAddress.Parse(name[3..]));
        request.CertificateExtensions.Add(also.Build());
        using var forged = request.Create(stolen, DateTimeOffset.UtcNow.AddHours(-1), DateTimeOffset.UtcNow.AddDays(1), [1, 2, 3, 4]);
        Assert.Contains("permitted subtree violation", Verify(authority.Certificate, forged), StringComparison.Ordinal);
    }

    /// <summary>What OpenSSL has against the chain; empty: nothing.</summary>
    private string Verify(byte[] authority, X509Certificate2 leaf)
    {
        var (root, end) = (Path.Combine(folder, "root.pem"), Path.Combine(folder, "leaf.pem"));
        File.WriteAllText(root, PemEncoding.WriteString("CERTIFICATE", authority));
        File.WriteAllText(end, leaf.ExportCertificatePem());
        Process process;
        try
        {
            process = Process.Start(new ProcessStartInfo("openssl", ["verify", "-x509_strict", "-purpose", "sslserver", "-CAfile", root, end]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("OpenSSL is not installed here.");
            throw;
        }

        using (process)
        {
            var said = process.StandardError.ReadToEnd() + process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? "" : said;
        }
    }
}
