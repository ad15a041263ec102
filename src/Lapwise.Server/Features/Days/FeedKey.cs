using System.Security.Cryptography;
using System.Text;
using Lapwise.Server.Phones;

namespace Lapwise.Server.Features.Days;

/// <summary>
/// The secret in the calendar's address: 256 random bits in a file that only this person may read. It is kept as it is, for
/// the page shows it again; it is no part of what the shop takes out or in.
/// </summary>
internal sealed class FeedKey(string path)
{
    private const int Bytes = 32;
    private readonly Lock changing = new();
    private string? known;

    /// <summary>Null: there is no address.</summary>
    public string? Now
    {
        get
        {
            lock (changing) return known ??= File.Exists(path) ? File.ReadAllText(path).Trim() : null;
        }
    }

    /// <summary>A new address; the one before leads nowhere from now on.</summary>
    public void Renew()
    {
        lock (changing)
        {
            var fresh = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes));
            OwnerOnly.Write(path, Encoding.ASCII.GetBytes(fresh));
            known = fresh;
        }
    }

    public void TakeBack()
    {
        lock (changing)
        {
            File.Delete(path);
            known = null;
        }
    }

    /// <summary>Compared in the same time whatever it is, so that nothing is learnt by trying.</summary>
    public bool Is(string said) => Now is { } key && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(key), Encoding.UTF8.GetBytes(said));
}
