using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>When, and around what, the job is done. Everything may be left out: then stated defaults hold and days are counted, not dated.</summary>
public sealed record TimelineDocument
{
    /// <summary>First day on site, as <c>2026-12-07</c>; left out: days are counted from day 1, a Monday.</summary>
    public string? Start { get; set; }
    /// <summary>IANA time zone of the site, as <c>America/Chicago</c>: for calendars that are sent out; left out: the clock on the wall.</summary>
    public string? Zone { get; set; }
    /// <summary>When work may begin on a day, as <c>8:00</c>; left out: 8:00.</summary>
    public string? WorkFrom { get; set; }
    /// <summary>When work must have ended, as <c>16:30</c>; left out: 16:30.</summary>
    public string? WorkTo { get; set; }
    /// <summary>The days worked; left out: Monday to Friday.</summary>
    public IReadOnlyList<Weekday>? WorkDays { get; set; }
    /// <summary>Dates on which nobody works, as <c>2026-12-24</c>.</summary>
    public IReadOnlyList<string>? DaysOff { get; set; }
    /// <summary>How far the room swings between night and day; left out: it stays as read.</summary>
    public Entry? DaySwing { get; set; }
    /// <summary>When the room is warmest, as <c>15:00</c>; left out: 15:00.</summary>
    public string? WarmestAt { get; set; }
    /// <summary>Date by whose evening light use was promised.</summary>
    public string? PromisedBy { get; set; }
    /// <summary>Longest the customer can be without sink and cooktop, as <c>5 d</c>; left out: no limit.</summary>
    public Entry? LongestWithout { get; set; }
    /// <summary>Whether bond is tested first; left out: where the surface is in doubt.</summary>
    public bool? BondTest { get; set; }
    /// <summary>What is taken out and put back; left out: what stands in the cutouts.</summary>
    public IReadOnlyList<FixtureDocument>? Fixtures { get; set; }
    /// <summary>Steps that differ from the usual: their time, or that they are left out.</summary>
    public IReadOnlyList<SiteStepDocument>? Steps { get; set; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<Weekday>))]
public enum Weekday { Monday, Tuesday, Wednesday, Thursday, Friday, Saturday, Sunday }

/// <summary>What a top is made of, or covered with.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<Substrate>))]
public enum Substrate { Laminate, Wood, Tile, Stone, OldCoating }

/// <summary>Who does a step.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<Doer>))]
public enum Doer
{
    Crew,
    /// <summary>A licensed trade: water, gas, mains.</summary>
    Trade,
    Customer,
}

/// <summary>Something that stands in or on a top.</summary>
public sealed record FixtureDocument
{
    /// <summary>What it is, as <c>sink and tap</c>.</summary>
    public string Name { get; set; } = "";
    /// <summary>Who takes it out and puts it back; left out: a licensed trade.</summary>
    public Doer? By { get; set; }
    /// <summary>Time to take it out; left out: a stated default.</summary>
    public Entry? Out { get; set; }
    /// <summary>Time to put it back; left out: a stated default.</summary>
    public Entry? Back { get; set; }
}

/// <summary>The steps of a job on site, in their usual order.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<SiteStep>))]
public enum SiteStep
{
    PracticeBoard, ProtectRoom, TakeOut, OldSilicone, BondTest, Clean, Repair, Tent, AirOff, Mask, Sand, Prime,
    Wipe, SandBetween, Coat, Unmask, ClearRoom, PutBack, NewCaulk, TouchUp, Handover,
}

/// <summary>A step that differs from the usual.</summary>
public sealed record SiteStepDocument
{
    /// <summary>Which step.</summary>
    public SiteStep Step { get; set; }
    /// <summary>Time it takes the crew as it is, for each fixture where it is taken out or put back; left out: reckoned.</summary>
    public Entry? Time { get; set; }
    /// <summary>True: this job has no such step.</summary>
    public bool? LeaveOut { get; set; }
}
