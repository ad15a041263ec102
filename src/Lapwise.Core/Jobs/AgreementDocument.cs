using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What is talked over with the customer.</summary>
public sealed record AgreementDocument
{
    /// <summary>Whom the quote is for.</summary>
    public string? Customer { get; set; }
    /// <summary>How often one drives out; left out: on every day on which the crew does something there.</summary>
    public int? Visits { get; set; }
    /// <summary>Taken off the price before tax.</summary>
    public Entry? Discount { get; set; }
    /// <summary>Other ways to have it, each priced against the job as it stands.</summary>
    public IReadOnlyList<OptionDocument>? Options { get; set; }
    /// <summary>Who lives there while it is done.</summary>
    public HouseholdDocument? Household { get; set; }
    /// <summary>The board in the real colour and sheen.</summary>
    public SampleBoardDocument? SampleBoard { get; set; }
    /// <summary>The day the deposit came in, as <c>2026-11-25</c>; left out: it has not.</summary>
    public string? DepositInOn { get; set; }
    /// <summary>Changes asked for after the quote.</summary>
    public IReadOnlyList<ChangeDocument>? Changes { get; set; }
}

/// <summary>Another way to have it.</summary>
public sealed record OptionDocument
{
    /// <summary>What the customer calls it.</summary>
    public string Name { get; set; } = "";
    /// <summary>Another shape for every open edge.</summary>
    public ProfileDocument? Edge { get; set; }
    /// <summary>Another product or colour for a coat.</summary>
    public IReadOnlyList<CoatOptionDocument>? Coats { get; set; }
}

/// <summary>Another product or colour for one coat.</summary>
public sealed record CoatOptionDocument
{
    /// <summary>Which coat of the system, from 1.</summary>
    public int Coat { get; set; }
    /// <summary>Id of the other product, as for another sheen; left out: the same.</summary>
    public string? Product { get; set; }
    /// <summary>The other colour; left out: the same.</summary>
    public string? Color { get; set; }
}

public sealed record HouseholdDocument
{
    /// <summary>Children live there.</summary>
    public bool? Children { get; set; }
    /// <summary>Animals live there, birds and fish among them.</summary>
    public bool? Pets { get; set; }
    /// <summary>There is another place to cook and wash up meanwhile.</summary>
    public bool? OtherKitchen { get; set; }
}

public sealed record SampleBoardDocument
{
    /// <summary>What it shows: colour and sheen. A coat of a colour it does not name waits for a board of its own; left out: whatever the job asks for.</summary>
    public string? Shows { get; set; }
    /// <summary>The day the customer signed it; left out: not yet.</summary>
    public string? SignedOn { get; set; }
}

/// <summary>A change asked for after the quote, with its price.</summary>
public sealed record ChangeDocument
{
    /// <summary>What changes.</summary>
    public string What { get; set; } = "";
    /// <summary>What it adds before tax; below zero: what it takes off.</summary>
    public Entry Price { get; set; } = "";
    /// <summary>The day the customer signed it; left out: not yet, and it does not count.</summary>
    public string? SignedOn { get; set; }
}
