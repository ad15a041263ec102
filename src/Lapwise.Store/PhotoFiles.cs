using System.Security.Cryptography;

namespace Lapwise.Store;

/// <summary>What came of keeping a photo.</summary>
public enum PhotoAnswer
{
    Kept,
    /// <summary>Larger than is kept.</summary>
    TooLarge,
    /// <summary>The bytes are not what their id says.</summary>
    OtherContent,
    /// <summary>Not a JPEG, or one cut off.</summary>
    NotAPhoto,
    /// <summary>It still says where, when or by what it was taken.</summary>
    TellsMore,
}

/// <summary>
/// The photos of the shop, each a JPEG file named by the SHA-256 of its content: sent twice it is there once, and a reference
/// can never point at another picture. Only pictures that tell nothing but the picture are kept.
/// </summary>
public sealed class PhotoFiles(string folder)
{
    /// <summary>A photo of 1600 pixels is some 300 kB.</summary>
    public const int MostBytes = 1_000_000;

    /// <summary>How long a photo outlives the last job that refers to it, so that putting a job back brings its pictures back.</summary>
    private static readonly TimeSpan Keep = TimeSpan.FromDays(30);

    public async Task<PhotoAnswer> Save(string id, ReadOnlyMemory<byte> jpeg, CancellationToken cancel)
    {
        if (jpeg.Length > MostBytes) return PhotoAnswer.TooLarge;
        if (Convert.ToHexStringLower(SHA256.HashData(jpeg.Span)) != id) return PhotoAnswer.OtherContent;
        if (JpegContent.Look(jpeg.Span) is var content && content != PhotoAnswer.Kept) return content;
        if (File.Exists(PathOf(id))) return PhotoAnswer.Kept;
        Directory.CreateDirectory(folder);
        var fresh = PathOf(id) + "." + Guid.NewGuid().ToString("N");
        await File.WriteAllBytesAsync(fresh, jpeg, cancel);
        File.Move(fresh, PathOf(id), overwrite: true);
        return PhotoAnswer.Kept;
    }

    /// <summary>Path of its file, or null.</summary>
    public string? Find(string id) => id.Length == 64 && id.All(char.IsAsciiHexDigitLower) && File.Exists(PathOf(id)) ? PathOf(id) : null;

    /// <summary>Takes out photos that no job has referred to for a month: a customer's kitchen is not kept for ever.</summary>
    /// <param name="referredTo">Ids that jobs refer to now.</param>
    public void Sweep(IReadOnlySet<string> referredTo, DateTimeOffset now)
    {
        if (!Directory.Exists(folder)) return;
        foreach (var file in Directory.GetFiles(folder))
        {
            if (referredTo.Contains(Path.GetFileNameWithoutExtension(file))) File.SetLastWriteTimeUtc(file, now.UtcDateTime);
            else if (now.UtcDateTime - File.GetLastWriteTimeUtc(file) > Keep) File.Delete(file);
        }
    }

    private string PathOf(string id) => Path.Combine(folder, id + ".jpg");
}
