using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Lapwise.Server.Phones;

/// <summary>A device that was let in. Its token is kept only as a hash: whoever reads the file cannot pose as the device.</summary>
public sealed record PairedPhone(string Id, string Name, string TokenSha256, DateTimeOffset Since, DateTimeOffset Seen);

/// <summary>Which devices may come in, and whether the door for them is open; kept in a file that only this person may read.</summary>
public sealed class PhoneBook(string path, TimeProvider time)
{
    /// <summary>How often the file notes that a device was here.</summary>
    private static readonly TimeSpan NoteSeenEvery = TimeSpan.FromMinutes(10);
    private readonly Lock changing = new();
    private PhonePages? pages;

    public bool IsOpen
    {
        get { lock (changing) return Pages.IsOpen; }
        set { lock (changing) Write(Pages with { IsOpen = value }); }
    }

    public IReadOnlyList<PairedPhone> Phones
    {
        get { lock (changing) return Pages.Phones; }
    }

    private PhonePages Pages => pages ??= File.Exists(path)
        ? JsonSerializer.Deserialize(File.ReadAllBytes(path), PhoneJson.Default.PhonePages) ?? new PhonePages(false, [])
        : new PhonePages(false, []);

    /// <summary>Lets a device in. The token is given out this once.</summary>
    public string Add(string name)
    {
        var token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        var now = time.GetUtcNow();
        lock (changing) Write(Pages with { Phones = [.. Pages.Phones, new PairedPhone(Guid.CreateVersion7(now).ToString("N"), name, HashOf(token), now, now)] });
        return token;
    }

    /// <summary>False where there is no such device.</summary>
    public bool Remove(string id)
    {
        lock (changing)
        {
            if (Pages.Phones.All(p => p.Id != id)) return false;
            Write(Pages with { Phones = [.. Pages.Phones.Where(p => p.Id != id)] });
            return true;
        }
    }

    /// <summary>The device that holds this token, or null.</summary>
    public PairedPhone? Find(string token)
    {
        var hash = HashOf(token);
        lock (changing)
        {
            if (Pages.Phones.FirstOrDefault(p => p.TokenSha256 == hash) is not { } phone) return null;
            var now = time.GetUtcNow();
            if (now - phone.Seen > NoteSeenEvery) Write(Pages with { Phones = [.. Pages.Phones.Select(p => p.Id == phone.Id ? p with { Seen = now } : p)] });
            return phone;
        }
    }

    private void Write(PhonePages changed)
    {
        OwnerOnly.Write(path, JsonSerializer.SerializeToUtf8Bytes(changed, PhoneJson.Default.PhonePages));
        pages = changed;
    }

    private static string HashOf(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(token)));
}

internal sealed record PhonePages(bool IsOpen, IReadOnlyList<PairedPhone> Phones);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(PhonePages))]
internal sealed partial class PhoneJson : JsonSerializerContext;
