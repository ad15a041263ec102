using System.Text.Json;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Files;

/// <summary>How a document is written.</summary>
public enum DocumentForm { Yaml, Json }

/// <summary>Jobs and products as files, YAML or JSON, both ways.</summary>
public static class DocumentFile
{
    /// <summary>A job from a file, or from <paramref name="input"/> where the path is <c>-</c>.</summary>
    public static FileRead<JobDocument> ReadJob(string path, TextReader input) => Read(DocumentText.JsonOf(path, input), JobFile.ReadJob);

    /// <summary>A job from text in either form.</summary>
    public static FileRead<JobDocument> ReadJob(string text) => Read(DocumentText.JsonOf(text), JobFile.ReadJob);

    /// <summary>A product from text in either form.</summary>
    public static FileRead<ProductDocument> ReadProduct(string text) => Read(DocumentText.JsonOf(text), JobFile.ReadProduct);

    /// <summary>The shop's rates from a file.</summary>
    public static FileRead<RatesDocument> ReadRates(string path, TextReader input) => Read(DocumentText.JsonOf(path, input), JobFile.ReadRates);

    /// <summary>The log of the shelf from a file.</summary>
    public static FileRead<ShelfDocument> ReadShelf(string path, TextReader input) => Read(DocumentText.JsonOf(path, input), JobFile.ReadShelf);

    /// <summary>Crews, gear and days lost from a file.</summary>
    public static FileRead<DaysDocument> ReadDays(string path, TextReader input) => Read(DocumentText.JsonOf(path, input), JobFile.ReadDays);

    private static readonly string[] ProductEndings = ["yaml", "yml", "json"];

    /// <summary>
    /// Every product of a folder: files named <c>*.product.yaml</c>, <c>.yml</c> or <c>.json</c>, by name.
    /// The path of a fault begins with its file. A folder that is not there holds no products.
    /// </summary>
    public static (IReadOnlyList<ProductDocument> Products, IReadOnlyList<Fault> Faults) ReadProducts(string folder)
    {
        if (!Directory.Exists(folder)) return ([], []);
        var (products, faults) = (new List<ProductDocument>(), new List<Fault>());
        var files = ProductEndings.SelectMany(ending => Directory.EnumerateFiles(folder, "*.product." + ending)).Order(StringComparer.Ordinal);
        foreach (var file in files)
        {
            var read = Read(DocumentText.JsonOf(file, TextReader.Null), JobFile.ReadProduct);
            if (read.Document is { } product) products.Add(product);
            faults.AddRange(read.Faults.Select(f => f with { Path = $"{Path.GetFileName(file)}{(f.Path.Length > 0 ? " " : "")}{f.Path}" }));
        }

        return (products, faults);
    }

    public static string Write(JobDocument job, DocumentForm form) => InForm(JobFile.Write(job), form);

    public static string Write(ProductDocument product, DocumentForm form) => InForm(JobFile.Write(product), form);

    private static FileRead<T> Read<T>((string? Json, IReadOnlyList<Fault> Faults) text, Func<string, FileRead<T>> read) where T : class =>
        text.Json is { } json ? read(json) : new FileRead<T>(null, text.Faults, new Dictionary<string, int>());

    private static string InForm(string json, DocumentForm form)
    {
        if (form == DocumentForm.Json) return json + "\n";
        using var document = JsonDocument.Parse(json);
        return YamlText.FromJson(document.RootElement);
    }
}
