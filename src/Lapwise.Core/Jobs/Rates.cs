using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>The shop's rates after reading.</summary>
/// <param name="GivenBy">Who gives a quote; blank: nobody is named on it.</param>
/// <param name="WagePerHour">Before burden.</param>
/// <param name="Margin">Share of the price, 0 to 0.9.</param>
/// <param name="Assumed">What was left out and is a default here, in words; empty: everything is the shop's own.</param>
public sealed record Rates(
    string GivenBy,
    Currency Currency,
    MoneyAmount WagePerHour,
    decimal Burden,
    decimal Waste,
    MaterialCharge MaterialCharge,
    MoneyAmount ConsumablesPerCoat,
    MoneyAmount ConsumablesPerJob,
    MoneyAmount TravelPerVisit,
    decimal Overhead,
    decimal Margin,
    decimal Tax,
    Taxed Taxed,
    MoneyAmount MinimumCharge,
    IReadOnlyList<Stage> Stages,
    int ValidDays,
    CallBacks CallBacks,
    IReadOnlyList<Phrase> Assumed)
{
    /// <summary>What one hour costs the shop.</summary>
    public MoneyAmount LabourPerHour => WagePerHour * (1 + Burden);
}

/// <param name="Share">Of the price, above 0.</param>
public sealed record Stage(Phrase Name, decimal Share);

/// <param name="CostEach">Null: a visit and three hours.</param>
public sealed record CallBacks(int Jobs, int CameBack, MoneyAmount? CostEach)
{
    // Worth of the cautious guess in jobs: one in twenty comes back until the shop's own record outweighs it.
    private const int GuessedJobs = 20;
    private const int GuessedCameBack = 1;

    /// <summary>Chance that a job comes back: the record of the shop, on top of one in twenty (the mean of a beta law).</summary>
    public decimal Chance => (CameBack + GuessedCameBack) / (decimal)(Jobs + GuessedJobs);
}

/// <summary>What is talked over with the customer, after reading.</summary>
/// <param name="Visits">Null: the days on which the crew is there.</param>
public sealed record Agreement(
    string Customer,
    int? Visits,
    MoneyAmount Discount,
    IReadOnlyList<OtherWay> Options,
    Household Household,
    SampleBoard SampleBoard,
    DateOnly? DepositInOn,
    IReadOnlyList<AgreedChange> Changes);

/// <param name="Document">The job as it would be.</param>
public sealed record OtherWay(string Name, JobDocument Document, string Path);

public sealed record Household(bool Children, bool Pets, bool OtherKitchen);

/// <param name="Shows">In the finisher's words; blank: whatever the job asks for.</param>
/// <param name="SignedOn">Null: not yet.</param>
public sealed record SampleBoard(string Shows, DateOnly? SignedOn)
{
    /// <summary>Whether a coat of this colour may be bought: it is clear, or the customer signed a board that names it.</summary>
    public bool Covers(string? colour) => string.IsNullOrWhiteSpace(colour) || (SignedOn is not null && (Shows.Length == 0 || Names(colour)));

    /// <summary>The words of the colour stand in what the board shows, one after the other.</summary>
    private bool Names(string colour) => Words(Shows).Contains(Words(colour), StringComparison.OrdinalIgnoreCase);

    /// <summary><c>Warm-grey, satin</c> as <c> Warm grey satin </c>, so that a word is not found inside another.</summary>
    private static string Words(string text) =>
        $" {string.Join(' ', string.Concat(text.Select(c => char.IsLetterOrDigit(c) ? c : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries))} ";
}

public sealed record AgreedChange(string What, MoneyAmount Price, DateOnly? SignedOn);
