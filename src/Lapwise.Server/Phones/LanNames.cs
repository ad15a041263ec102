using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Lapwise.Server.Phones;

/// <summary>By what names and addresses others on the network reach this machine.</summary>
public sealed class LanNames : IEquatable<LanNames>
{
    private LanNames(IReadOnlyList<string> hosts, IReadOnlyList<IPAddress> addresses) => (Hosts, Addresses) = (hosts, addresses);

    public IReadOnlyList<string> Hosts { get; }

    /// <summary>Private addresses; loopback last.</summary>
    public IReadOnlyList<IPAddress> Addresses { get; }

    /// <summary>What a phone is told to use: an address, because not every phone looks up .local names; null: there is no network.</summary>
    public IPAddress? ForPhones => Addresses.FirstOrDefault(a => !IPAddress.IsLoopback(a));

    public static LanNames Now()
    {
        var addresses = NetworkInterface.GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == OperationalStatus.Up && n.NetworkInterfaceType != NetworkInterfaceType.Loopback)
            .SelectMany(n => n.GetIPProperties().UnicastAddresses)
            .Select(u => u.Address)
            .Where(a => a.AddressFamily == AddressFamily.InterNetwork)
            .OrderBy(a => ShopAuthority.IsPrivate(a) ? 0 : 1).ThenBy(a => a.ToString(), StringComparer.Ordinal);
        var name = Dns.GetHostName().Split('.')[0].ToLowerInvariant();
        string[] hosts = name.Length > 0 && name.All(c => char.IsAsciiLetterOrDigit(c) || c == '-') ? [name + ".local", "localhost"] : ["localhost"];
        return new LanNames(hosts, [.. addresses, IPAddress.Loopback]);
    }

    /// <summary>Whether a request that names this host means this machine.</summary>
    public bool Has(string host) =>
        Hosts.Contains(host, StringComparer.OrdinalIgnoreCase) || (IPAddress.TryParse(host, out var address) && Addresses.Contains(address));

    public bool Equals(LanNames? other) => other is not null && Hosts.SequenceEqual(other.Hosts, StringComparer.Ordinal) && Addresses.SequenceEqual(other.Addresses);

    public override bool Equals(object? obj) => Equals(obj as LanNames);

    public override int GetHashCode() => HashCode.Combine(Hosts.Count, Addresses.Count > 0 ? Addresses[0] : IPAddress.None);
}
