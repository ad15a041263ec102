using System.Text.Json.Serialization;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Timeline;

// Result records of the timeline. Times are the clock on the wall at the site.

/// <summary>Which days, with which recoat windows.</summary>
/// <param name="IsDated">False: no first day is set, and day 1 stands for it.</param>
/// <param name="Day1">The first day on site.</param>
/// <param name="RoomByHour">Temperature of the top, an hour apart from midnight of day 1.</param>
/// <param name="Reasons">What does not work, hardest first; notes too.</param>
public sealed record JobTimeline(
    bool IsDated,
    DateOnly Day1,
    IReadOnlyList<PlannedStep> Steps,
    IReadOnlyList<PlannedWait> Waits,
    IReadOnlyList<UseDate> UseDates,
    IReadOnlyList<double> RoomByHour,
    IReadOnlyList<Reason> Reasons)
{
    /// <summary>Days of the job, from 1, on which nobody works.</summary>
    public IReadOnlyList<int> DaysNotWorked { get; init; } = [];

    /// <summary>These are the days the shop has settled on for the job; false: the earliest it could have by itself.</summary>
    public bool IsSettled { get; init; }

    /// <summary>Days were settled for the job, and it was changed since so that they fit no more; one of the reasons, too.</summary>
    public Reason? OutOfDate { get; init; }

    public bool Holds => Steps.Count > 0 && Reasons.All(r => r.Limit == Limit.Note);

    /// <summary>Nothing to place in time yet.</summary>
    public static JobTimeline Nothing(TimelineAsks asks) => new(asks.Start is not null, new WorkCalendar(asks).Day0, [], [], [], [], []);

    /// <summary>The day a coat goes on; null: it has no date yet.</summary>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    public DateOnly? CoatedOn(int coat) =>
        IsDated && Steps.FirstOrDefault(s => s.Kind == SiteStep.Coat && s.Coat == coat) is { } step ? DateOnly.FromDateTime(step.Start) : null;

    /// <summary>Day of the job, from 1.</summary>
    public int DayOf(DateTime at) => DateOnly.FromDateTime(at).DayNumber - Day1.DayNumber + 1;
}

/// <summary>One thing done on site.</summary>
/// <param name="Name">What is done, in a few words.</param>
/// <param name="How">How, or with what; null: nothing to add.</param>
/// <param name="Coat">Place of the coat it belongs to, from 0; null: none.</param>
/// <param name="Hands">How many of the crew it is reckoned for.</param>
/// <param name="Parts">One for each day it is worked on.</param>
/// <param name="IsInserted">Not wanted by the system, but made necessary by a window that cannot be met.</param>
public sealed record PlannedStep(
    SiteStep Kind, Phrase Name, Phrase? How, Doer By, int? Coat, int Hands,
    IReadOnlyList<(DateTime From, DateTime To)> Parts, Basis TimeBasis, IReadOnlyList<Phrase> Cautions, bool IsInserted)
{
    public DateTime Start => Parts[0].From;
    public DateTime End => Parts[^1].To;
    /// <summary>Working time on the clock.</summary>
    public TimeSpan Worked => Parts.Aggregate(TimeSpan.Zero, (sum, p) => sum + (p.To - p.From));
}

/// <summary>A wait with nobody there.</summary>
/// <param name="After">Place of the step it follows.</param>
/// <param name="Before">Place of the step it holds back.</param>
/// <param name="Latest">Null: no latest.</param>
public sealed record PlannedWait(Phrase Name, int After, int Before, DateTime From, DateTime Earliest, DateTime? Latest, Basis Basis)
{
    /// <summary>What it comes to whatever the hour of the day it begins. Worked out when asked for: only many jobs on one calendar need it.</summary>
    [JsonIgnore] public required Lazy<WaitAtAnyHour> AtAnyHour { get; init; }
}

/// <param name="Needed">Long enough whatever the hour.</param>
/// <param name="Allowed">Not too late whatever the hour; null: no latest.</param>
public sealed record WaitAtAnyHour(TimeSpan Needed, TimeSpan? Allowed);

[JsonConverter(typeof(CamelCaseEnumConverter<UseOf>))]
public enum UseOf { LightUse, Water, HeavyUse, FullCure }

/// <summary>When the customer may do what.</summary>
/// <param name="Origin">Data sheet, or a cautious guess.</param>
public sealed record UseDate(UseOf Use, DateTime From, Quantities.Origin Origin, Basis Basis)
{
    public static string Say(UseOf use, Voice v) => use switch
    {
        UseOf.LightUse => v.Say("light use", "uso ligero"),
        UseOf.Water => v.Say("standing water", "agua encima"),
        UseOf.HeavyUse => v.Say("heavy use", "uso intenso"),
        UseOf.FullCure => v.Say("full cure", "curado total"),
        _ => throw new ArgumentOutOfRangeException(nameof(use), use, null),
    };
}
