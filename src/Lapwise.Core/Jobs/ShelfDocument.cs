using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What came to the shelf and left it, in order. It only grows: a slip is put right by a further entry.</summary>
public sealed record ShelfDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; set; } = CurrentVersion;
    /// <summary>Every entry, oldest first.</summary>
    public IReadOnlyList<ShelfEntryDocument> Entries { get; set; } = [];
    /// <summary>What should never run out, and how much of it is to be kept.</summary>
    public IReadOnlyList<KeepDocument>? Keep { get; set; }
}

/// <summary>What happened to a pack: a kit's parts that belong together.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<ShelfEntryKind>))]
public enum ShelfEntryKind
{
    /// <summary>Came in; names product, lot, size and expiry.</summary>
    Received,
    /// <summary>Opened for the first time.</summary>
    Opened,
    /// <summary>Used on a job.</summary>
    Taken,
    /// <summary>Counted anew: what is left is what is said here.</summary>
    Counted,
    /// <summary>The maker gave the lot another date in writing.</summary>
    Redated,
    /// <summary>Thrown out, with its reason.</summary>
    WrittenOff,
}

/// <summary>One entry of the log.</summary>
public sealed record ShelfEntryDocument
{
    /// <summary>Its own id; the same entry sent twice counts once.</summary>
    public string Id { get; set; } = "";
    /// <summary>The day it happened, as <c>2026-11-25</c>.</summary>
    public string On { get; set; } = "";
    /// <summary>What happened.</summary>
    public ShelfEntryKind Kind { get; set; }
    /// <summary>The pack it happened to; of several received at once each gets <c>.1</c>, <c>.2</c> … after this name.</summary>
    public string Pack { get; set; } = "";
    /// <summary>Received: id of the product.</summary>
    public string? Product { get; set; }
    /// <summary>Received: the colour on the tin; left out: clear.</summary>
    public string? Color { get; set; }
    /// <summary>Received: the maker's lot number.</summary>
    public string? Lot { get; set; }
    /// <summary>Received: all parts together of one pack.</summary>
    public Entry? Size { get; set; }
    /// <summary>Received: how many packs; left out: one.</summary>
    public int? Count { get; set; }
    /// <summary>Received, redated: last day it may be used. Opened: last day once open, where the sheet gives one.</summary>
    public string? Expires { get; set; }
    /// <summary>Taken: how much of A. Counted: how much is left.</summary>
    public Entry? A { get; set; }
    /// <summary>The same of B.</summary>
    public Entry? B { get; set; }
    /// <summary>The same of the third part, where there is one; left out: it goes with A at the ratio.</summary>
    public Entry? C { get; set; }
    /// <summary>Received: what one pack cost.</summary>
    public Entry? Price { get; set; }
    /// <summary>Taken: for which job.</summary>
    public string? Job { get; set; }
    /// <summary>Written off, redated: why.</summary>
    public string? Why { get; set; }
}

/// <summary>Least to keep of a product in a colour.</summary>
public sealed record KeepDocument
{
    /// <summary>Id of the product.</summary>
    public string Product { get; set; } = "";
    /// <summary>Colour; left out: clear.</summary>
    public string? Color { get; set; }
    /// <summary>All parts together.</summary>
    public Entry Least { get; set; } = "";
}
