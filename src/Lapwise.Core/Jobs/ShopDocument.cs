namespace Lapwise.Core.Jobs;

/// <summary>Everything a shop has, in one document: jobs, products, shelf and rates.</summary>
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
}

/// <summary>A job under the id it is stored by.</summary>
public sealed record KeptJobDocument
{
    /// <summary>Up to 64 letters, digits, - and _.</summary>
    public string Id { get; set; } = "";
    /// <summary>The job as entered.</summary>
    public JobDocument Job { get; set; } = new();
}
