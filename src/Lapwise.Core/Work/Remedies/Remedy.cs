using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Remedies;

/// <summary>
/// What a remedy asks for, least trouble first; this order ranks remedies that do equally well. First what costs only care,
/// then a cup or a wait, then somebody's time, then what the customer will see, then a different coating. Common practice,
/// no source.
/// </summary>
[JsonConverter(typeof(CamelCaseEnumConverter<RemedyKind>))]
public enum RemedyKind
{
    /// <summary>Nothing to fetch and nobody to wait for; only more lines to keep in mind.</summary>
    NarrowerSections,
    /// <summary>A larger cup, within what the data sheet lets mix at one time.</summary>
    LargerBatch,
    /// <summary>The cans stand somewhere cool overnight.</summary>
    CoolerMaterial,
    /// <summary>The day begins or ends at another hour.</summary>
    CoolerHour,
    /// <summary>A test board first, and less dry film.</summary>
    Thinner,
    /// <summary>Somebody is there who can measure and stir.</summary>
    HelperMixes,
    /// <summary>Somebody is there who can roll, and two hands show on one job.</summary>
    AnotherPersonRolls,
    /// <summary>A line the customer sees, where the top turns and the eye expects one.</summary>
    BreakAtCorner,
    /// <summary>A line off the middle of the top.</summary>
    BreakNearEnd,
    /// <summary>A line in plain view.</summary>
    BreakInMiddle,
    /// <summary>Another coating to get, approve and learn.</summary>
    SlowerProduct,
}

/// <summary>A change that would make a plan work, or work better, with what planning it really gave.</summary>
/// <param name="Text">What to do.</param>
/// <param name="Change">What becomes different in the plan, or why nothing can be said of it.</param>
/// <param name="Tried">The plan with the change; null: no number can be had, and none is claimed.</param>
public sealed record Remedy(RemedyKind Kind, Phrase Text, Phrase Change, Attempt? Tried)
{
    public string Code => Kind.ToString();

    /// <summary>It holds, and keeps in hand what was asked for.</summary>
    public bool KeepsTarget => Tried is { KeepsTarget: true };

    /// <summary>It holds, if narrowly.</summary>
    public bool Holds => Tried is { Holds: true };

    public long? LapMarginMs => Tried?.Work.LapMarginMs;

    public long? WorstAgeMs => Tried?.Work.WorstCountedMs;

    /// <summary>Best first: what keeps the target, then what holds, then what helps, then what cannot be told; then by trouble and margin.</summary>
    public static IReadOnlyList<Remedy> Ranked(IEnumerable<Remedy> remedies) =>
    [
        .. remedies.OrderByDescending(r => r.KeepsTarget).ThenByDescending(r => r.Holds).ThenByDescending(r => r.Tried is not null)
            .ThenBy(r => r.Kind).ThenByDescending(r => r.LapMarginMs),
    ];
}
