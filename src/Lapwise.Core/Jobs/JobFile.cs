using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Jobs;

/// <summary>What reading a file gave: the document, or null with every fault.</summary>
/// <param name="Lines">Line of each value of the file, from 1, by its path.</param>
public sealed record FileRead<T>(T? Document, IReadOnlyList<Fault> Faults, IReadOnlyDictionary<string, int> Lines) where T : class
{
    /// <summary>Says the line of faults that were found after the file was read; a value left out points at what should hold it.</summary>
    public IReadOnlyList<Fault> WithLines(IEnumerable<Fault> faults) => [.. faults.Select(f => f with { Line = f.Line ?? LineOf(f.Path) })];

    private int? LineOf(string path)
    {
        for (var at = path; at.Length > 0; at = at[..Math.Max(0, at.LastIndexOfAny(['.', '[']))])
        {
            if (Lines.TryGetValue(at, out var line)) return line;
        }

        return null;
    }
}

/// <summary>Jobs and products as JSON text, both ways. Nothing is thrown for what a file holds: every fault is said with its path and line.</summary>
public static class JobFile
{
    /// <summary>A job of a hundred tops is well under this.</summary>
    public const int MostBytes = 5_000_000;

    /// <summary>Deepest nesting that is read; a job needs eight.</summary>
    public const int DeepestNesting = 32;

    public static FileRead<JobDocument> ReadJob(ReadOnlySpan<byte> json) => Read(json, JobJson.Default.JobDocument, JobDocument.CurrentVersion);

    public static FileRead<JobDocument> ReadJob(string json) => ReadText(json, JobJson.Default.JobDocument, JobDocument.CurrentVersion);

    public static FileRead<ProductDocument> ReadProduct(ReadOnlySpan<byte> json) => Read(json, JobJson.Default.ProductDocument, ProductDocument.CurrentVersion);

    public static FileRead<ProductDocument> ReadProduct(string json) => ReadText(json, JobJson.Default.ProductDocument, ProductDocument.CurrentVersion);

    public static FileRead<ShelfDocument> ReadShelf(ReadOnlySpan<byte> json) => Read(json, JobJson.Default.ShelfDocument, ShelfDocument.CurrentVersion);

    public static FileRead<ShelfDocument> ReadShelf(string json) => ReadText(json, JobJson.Default.ShelfDocument, ShelfDocument.CurrentVersion);

    public static FileRead<RatesDocument> ReadRates(ReadOnlySpan<byte> json) => Read(json, JobJson.Default.RatesDocument, RatesDocument.CurrentVersion);

    public static FileRead<RatesDocument> ReadRates(string json) => ReadText(json, JobJson.Default.RatesDocument, RatesDocument.CurrentVersion);

    public static FileRead<DaysDocument> ReadDays(string json) => ReadText(json, JobJson.Default.DaysDocument, DaysDocument.CurrentVersion);

    public static string Write(RatesDocument rates) => JsonSerializer.Serialize(rates, JobJson.Default.RatesDocument);

    public static string Write(ShelfDocument shelf) => JsonSerializer.Serialize(shelf, JobJson.Default.ShelfDocument);

    public static string Write(JobDocument job) => JsonSerializer.Serialize(job, JobJson.Default.JobDocument);

    public static string Write(ProductDocument product) => JsonSerializer.Serialize(product, JobJson.Default.ProductDocument);

    /// <summary>The fault of a file over the size that is read, to be asked before opening it; null: it may be read.</summary>
    public static Fault? TooLarge(long bytes) => bytes <= MostBytes ? null : new Fault("", "FileTooLarge",
        v => v.Say($"The file has {v.Number(bytes / 1e6, 1)} MB; at most {v.Number(MostBytes / 1e6, 1)} MB are read.", $"El archivo tiene {v.Number(bytes / 1e6, 1)} MB; se leen como mucho {v.Number(MostBytes / 1e6, 1)} MB."),
        v => v.Say("Check that it is a job or a product; pictures and other data belong elsewhere.", "Compruebe que es un trabajo o un producto; las fotos y otros datos van en otra parte."));

    // UTF-8 never has fewer bytes than the text has characters, so a huge text is refused before it is copied.
    private static FileRead<T> ReadText<T>(string json, JsonTypeInfo<T> type, int version) where T : class =>
        TooLarge(json.Length) is { } tooLarge ? Refused<T>([tooLarge]) : Read(Encoding.UTF8.GetBytes(json), type, version);

    private static FileRead<T> Read<T>(ReadOnlySpan<byte> json, JsonTypeInfo<T> type, int version) where T : class
    {
        if (TooLarge(json.Length) is { } tooLarge) return Refused<T>([tooLarge]);
        if (json.StartsWith("\uFEFF"u8)) json = json[3..];
        var shape = JsonShape.Check(json, type);

        // A newer document may well hold members unknown here; to name them all would hide the cause.
        var newer = shape.Version is { } v ? DocumentVersion.Refuse("lapwise", v, version) : null;
        if (newer is not null) return Refused<T>([newer with { Line = shape.Lines.TryGetValue("lapwise", out var line) ? line : null }]);
        if (shape.Faults.Count > 0) return Refused<T>(shape.Faults);
        return new FileRead<T>(JsonSerializer.Deserialize(json, type), [], shape.Lines);
    }

    private static FileRead<T> Refused<T>(IReadOnlyList<Fault> faults) where T : class => new(null, faults, new Dictionary<string, int>());
}
