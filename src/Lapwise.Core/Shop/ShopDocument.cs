using System.Text.Json.Serialization;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;

namespace Lapwise.Core.Shop;

/// <summary>Everything a shop has, in one document: jobs, products, shelf, rates, days, and the quotes given out.</summary>
public sealed record ShopDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; set; } = CurrentVersion;
    /// <summary>The jobs, each under its id.</summary>
    public IReadOnlyList<KeptJobDocument> Jobs { get; set; } = [];
    /// <summary>The coatings, each under its own id.</summary>
    public IReadOnlyList<ProductDocument> Products { get; set; } = [];
    /// <summary>The log of the shelf; left out: none.</summary>
    public ShelfDocument? Shelf { get; set; }
    /// <summary>What the shop charges by; left out: nothing is entered.</summary>
    public RatesDocument? Rates { get; set; }
    /// <summary>Crews, gear and days lost; left out: nothing is entered.</summary>
    public DaysDocument? Days { get; set; }
    /// <summary>The days the shop has settled on; left out: none.</summary>
    public SettledDaysDocument? Settled { get; set; }
    /// <summary>The quotes given out, in their order; left out: none.</summary>
    public IReadOnlyList<IssuedQuote>? Quotes { get; set; }
}

/// <summary>A job under the id it is stored by.</summary>
public sealed record KeptJobDocument
{
    /// <summary>Up to 64 letters, digits, - and _.</summary>
    public string Id { get; set; } = "";
    /// <summary>The job as entered.</summary>
    public JobDocument Job { get; set; } = new();
}

/// <summary>Source-generated JSON of the whole shop.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    WriteIndented = true,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    UseStringEnumConverter = true,
    MaxDepth = 34)]
[JsonSerializable(typeof(ShopDocument))]
public sealed partial class ShopJson : JsonSerializerContext;
