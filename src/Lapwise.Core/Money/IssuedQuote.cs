using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Money;

/// <summary>
/// A quote as it was given out: the price, and everything it was made from. It is never changed; a change makes a new one
/// that says what differs.
/// </summary>
public sealed record IssuedQuote
{
    /// <summary>Its own id.</summary>
    public string Id { get; set; } = "";
    /// <summary>The number on the paper.</summary>
    public string Number { get; set; } = "";
    /// <summary>Id of the job it is for.</summary>
    public string JobId { get; set; } = "";
    /// <summary>The day it was given out, as <c>2026-11-25</c>.</summary>
    public string On { get; set; } = "";
    /// <summary>Last day it holds.</summary>
    public string ValidUntil { get; set; } = "";
    /// <summary>Of the documents below.</summary>
    public string Fingerprint { get; set; } = "";
    /// <summary>Version of the program that made it.</summary>
    public string Program { get; set; } = "";
    /// <summary>Id of the quote it takes the place of; left out: the first.</summary>
    public string? Replaces { get; set; }
    /// <summary>What was charged.</summary>
    public QuotedPrice Price { get; set; } = new();
    /// <summary>The job it was made from.</summary>
    public JobDocument Job { get; set; } = new();
    /// <summary>The products it was made from.</summary>
    public IReadOnlyList<ProductDocument> Products { get; set; } = [];
    /// <summary>The rates it was made from.</summary>
    public RatesDocument Rates { get; set; } = new();
    /// <summary>The days settled for the job by then; left out: none.</summary>
    public IReadOnlyList<VisitDocument>? Settled { get; set; }
    /// <summary>The language it was given out in.</summary>
    public Language Language { get; set; }
    /// <summary>The units it was given out in.</summary>
    public UnitSystem Units { get; set; }
}

/// <summary>The sums on the paper.</summary>
public sealed record QuotedPrice
{
    /// <summary>ISO 4217.</summary>
    public string Currency { get; set; } = "";
    /// <summary>Lines before tax; they add up to the net.</summary>
    public IReadOnlyList<QuotedLine> Lines { get; set; } = [];
    /// <summary>Before tax.</summary>
    public decimal Net { get; set; }
    /// <summary>The tax.</summary>
    public decimal Tax { get; set; }
    /// <summary>Net and tax.</summary>
    public decimal Total { get; set; }
    /// <summary>The payments; they add up to the total.</summary>
    public IReadOnlyList<QuotedLine> Stages { get; set; } = [];
    /// <summary>What each option adds to the total.</summary>
    public IReadOnlyList<QuotedLine> Options { get; set; } = [];
}

public sealed record QuotedLine(string Name, decimal Amount);

/// <summary>One value that is not the same in two quotes; null where it is not there.</summary>
/// <param name="Path">Place in the job, a product or the rates.</param>
public sealed record QuoteDifference(string Path, string? Before, string? After);

/// <summary>Makes the frozen quote, and says what differs between two.</summary>
public static class QuoteIssuing
{
    /// <summary>Only the products the job uses go in.</summary>
    public static IReadOnlyList<ProductDocument> ProductsOf(JobDocument job, IReadOnlyList<ProductDocument> library)
    {
        var named = job.System.Select(c => c.Product)
            .Concat((job.Agreement?.Options ?? []).SelectMany(o => o.Coats ?? []).Select(c => c.Product ?? ""))
            .ToHashSet(StringComparer.Ordinal);
        return [.. (job.Products ?? []).Concat(library).DistinctBy(p => p.Id, StringComparer.Ordinal).Where(p => named.Contains(p.Id)).OrderBy(p => p.Id, StringComparer.Ordinal)];
    }

    public static QuotedPrice Sums(JobPrice price, IEnumerable<(string Name, decimal Difference)> options, Voice voice) => new()
    {
        Currency = price.Rates.Currency.Code,
        Lines = [.. price.Quoted.Select(q => new QuotedLine(q.Name(voice), q.Amount.Value))],
        Net = price.Net.Value,
        Tax = price.Tax.Value,
        Total = price.Total.Value,
        Stages = [.. price.Stages.Select(s => new QuotedLine(s.Name(voice), s.Total.Value))],
        Options = [.. options.Select(o => new QuotedLine(o.Name, o.Difference))],
    };

    /// <summary>Every value of the documents and every sum that is not the same.</summary>
    public static IReadOnlyList<QuoteDifference> Differences(IssuedQuote before, IssuedQuote after) =>
    [
        .. JobMerging.Differing("job", JsonSerializer.SerializeToNode(before.Job, JobJson.Default.JobDocument), JsonSerializer.SerializeToNode(after.Job, JobJson.Default.JobDocument))
            .Concat(JobMerging.Differing("rates", JsonSerializer.SerializeToNode(before.Rates, JobJson.Default.RatesDocument), JsonSerializer.SerializeToNode(after.Rates, JobJson.Default.RatesDocument)))
            .Concat(before.Products.Concat(after.Products).Select(p => p.Id).Distinct(StringComparer.Ordinal).SelectMany(id => JobMerging.Differing("product " + id, Product(before, id), Product(after, id))))
            .Concat(JobMerging.Differing("days", Days(before), Days(after)))
            .Concat(JobMerging.Differing("price", JsonSerializer.SerializeToNode(before.Price, QuoteJson.Default.QuotedPrice), JsonSerializer.SerializeToNode(after.Price, QuoteJson.Default.QuotedPrice)))
            .Select(d => new QuoteDifference(d.Path, d.Mine, d.Other)),
    ];

    /// <summary>Whether what a quote sells is still what the job is: its tops, its coats and the total. Days and the room may have changed.</summary>
    public static bool StillFits(IssuedQuote quote, JobDocument job, JobPrice price) =>
        (quote.Price.Currency, quote.Price.Total) == (price.Rates.Currency.Code, price.Total.Value) && Sold(quote.Job) == Sold(job);

    private static string Sold(JobDocument job) => JobFile.Write(new JobDocument { Tops = job.Tops, System = job.System });

    /// <summary>When each visit begins, by its number.</summary>
    private static JsonObject Days(IssuedQuote quote) => new((quote.Settled ?? []).DistinctBy(v => v.Number).Select(v => KeyValuePair.Create($"visit {v.Number}", (JsonNode?)JsonValue.Create(v.From))));

    private static JsonNode? Product(IssuedQuote quote, string id) =>
        quote.Products.FirstOrDefault(p => p.Id == id) is { } product ? JsonSerializer.SerializeToNode(product, JobJson.Default.ProductDocument) : null;
}

/// <summary>Source-generated JSON of what is given out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, UseStringEnumConverter = true)]
[JsonSerializable(typeof(IssuedQuote))]
[JsonSerializable(typeof(IReadOnlyList<IssuedQuote>))]
[JsonSerializable(typeof(IReadOnlyList<QuoteDifference>))]
public sealed partial class QuoteJson : JsonSerializerContext;
