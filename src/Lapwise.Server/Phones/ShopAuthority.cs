using System.Formats.Asn1;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace Lapwise.Server.Phones;

/// <summary>
/// The shop's own certificate authority, made at first use and kept in a file that only this person may read. It signs one
/// certificate for this machine's names on its network. Its own certificate is constrained (RFC 5280, 4.2.1.10) to private
/// addresses and names under .local: whoever steals the key cannot pose as a bank to the phones that trust it.
/// </summary>
public sealed class ShopAuthority : IDisposable
{
    private const string ConstraintsOid = "2.5.29.30";
    private const string ServerAuthenticationOid = "1.3.6.1.5.5.7.3.1";
    private static readonly TimeSpan AuthorityLife = TimeSpan.FromDays(3650);
    /// <summary>Phones refuse server certificates that are valid for longer than 398 days.</summary>
    private static readonly TimeSpan LeafLife = TimeSpan.FromDays(397);
    private static readonly TimeSpan RenewBefore = TimeSpan.FromDays(30);
    /// <summary>A phone whose clock is a little behind must not think the certificate is from tomorrow.</summary>
    private static readonly TimeSpan ClockSlack = TimeSpan.FromDays(1);

    /// <summary>Networks of RFC 1918, RFC 3927 and RFC 4193, and this machine itself.</summary>
    private static readonly (string Address, int Bits)[] PrivateNetworks =
        [("10.0.0.0", 8), ("172.16.0.0", 12), ("192.168.0.0", 16), ("169.254.0.0", 16), ("127.0.0.0", 8), ("fc00::", 7), ("fe80::", 10)];

    private readonly X509Certificate2 authority;
    private readonly TimeProvider time;
    private readonly Lock signing = new();
    private (LanNames Names, X509Certificate2 Certificate)? leaf;

    private ShopAuthority(X509Certificate2 authority, TimeProvider time) => (this.authority, this.time) = (authority, time);

    /// <summary>Certificate of the authority for phones to trust, as DER.</summary>
    public byte[] Certificate => authority.RawData;

    /// <summary>SHA-256 of the certificate in pairs, to compare by eye with what the phone shows.</summary>
    public string Fingerprint => string.Join(' ', SHA256.HashData(authority.RawData).Select(b => b.ToString("X2", System.Globalization.CultureInfo.InvariantCulture)));

    /// <summary>Reads the authority from <paramref name="path"/>, or makes one there.</summary>
    public static ShopAuthority At(string path, TimeProvider time)
    {
        if (!File.Exists(path)) OwnerOnly.Write(path, Make(time));
        return new ShopAuthority(X509CertificateLoader.LoadPkcs12FromFile(path, null), time);
    }

    /// <summary>The certificate this machine shows, valid for the names it has now.</summary>
    public X509Certificate2 For(LanNames names)
    {
        lock (signing)
        {
            if (leaf is var (known, current) && known.Equals(names) && current.NotAfter - RenewBefore > time.GetUtcNow().UtcDateTime) return current;
            // One still in a handshake may use the old one, so it is left to the garbage collector.
            leaf = (names, Sign(names));
            return leaf.Value.Certificate;
        }
    }

    public void Dispose() => authority.Dispose();

    private static byte[] Make(TimeProvider time)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var mark = Convert.ToHexString(RandomNumberGenerator.GetBytes(3));
        var request = new CertificateRequest($"CN=Lapwise shop {mark}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: true, pathLengthConstraint: 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, critical: true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(new X509Extension(ConstraintsOid, OnlyHere(), critical: true));
        var now = time.GetUtcNow();
        using var certificate = request.CreateSelfSigned(now - ClockSlack, now + AuthorityLife);
        return certificate.Export(X509ContentType.Pkcs12);
    }

    private X509Certificate2 Sign(LanNames names)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Lapwise", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(ServerAuthenticationOid)], critical: false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(authority, includeKeyIdentifier: true, includeIssuerAndSerial: false));
        var also = new SubjectAlternativeNameBuilder();
        foreach (var name in names.Hosts) also.AddDnsName(name);
        foreach (var address in names.Addresses.Where(IsPrivate)) also.AddIpAddress(address);
        request.CertificateExtensions.Add(also.Build());
        var now = time.GetUtcNow();
        using var signed = request.Create(authority, now - ClockSlack, now - ClockSlack + LeafLife, RandomNumberGenerator.GetBytes(16));
        using var withKey = signed.CopyWithPrivateKey(key);
        // Some platforms do not take a key that lives only in memory; a round through PKCS #12 gives one they do.
        return X509CertificateLoader.LoadPkcs12(withKey.Export(X509ContentType.Pkcs12), null);
    }

    /// <summary>NameConstraints with only permitted subtrees.</summary>
    private static byte[] OnlyHere()
    {
        var asn = new AsnWriter(AsnEncodingRules.DER);
        using (asn.PushSequence())
        using (asn.PushSequence(new Asn1Tag(TagClass.ContextSpecific, 0)))
        {
            foreach (var name in (string[])["local", "localhost"])
            {
                using (asn.PushSequence()) asn.WriteCharacterString(UniversalTagNumber.IA5String, name, new Asn1Tag(TagClass.ContextSpecific, 2));
            }

            foreach (var (address, bits) in PrivateNetworks)
            {
                using (asn.PushSequence()) asn.WriteOctetString(AddressAndMask(IPAddress.Parse(address), bits), new Asn1Tag(TagClass.ContextSpecific, 7));
            }
        }

        return asn.Encode();
    }

    private static byte[] AddressAndMask(IPAddress address, int bits)
    {
        var bytes = address.GetAddressBytes();
        var mask = new byte[bytes.Length];
        for (var i = 0; i < bits; i++) mask[i / 8] |= (byte)(0x80 >> (i % 8));
        return [.. bytes, .. mask];
    }

    internal static bool IsPrivate(IPAddress address) => PrivateNetworks.Any(n => new IPNetwork(IPAddress.Parse(n.Address), n.Bits).Contains(address));
}
