using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What a shop enters to place many jobs over its days: crews, gear, ways, days lost, and visits that stay. Everything may be left out.</summary>
public sealed record DaysDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; set; } = CurrentVersion;
    /// <summary>The first day that is planned, as <c>2026-12-07</c>; left out: tomorrow, or for a list of files the first day one of them names.</summary>
    public string? First { get; set; }
    /// <summary>How many days ahead are planned; left out: 180.</summary>
    public int? DaysAhead { get; set; }
    /// <summary>Who works; left out: one crew that can do everything.</summary>
    public IReadOnlyList<ShopCrewDocument>? Crews { get; set; }
    /// <summary>What the crews share and there are few of; left out: enough of everything.</summary>
    public IReadOnlyList<ShopGearDocument>? Gear { get; set; }
    /// <summary>The way from one site to another, as <c>30 min</c>; left out: half an hour.</summary>
    public Entry? BetweenSites { get; set; }
    /// <summary>Ways that take another time.</summary>
    public IReadOnlyList<WayDocument>? Ways { get; set; }
    /// <summary>Days on which no coat goes on.</summary>
    public IReadOnlyList<LostDayDocument>? Lost { get; set; }
    /// <summary>What is asked of single jobs; a job that is not named is planned as it stands.</summary>
    public IReadOnlyList<JobDaysDocument>? Jobs { get; set; }
    /// <summary>Visits that stay where they are.</summary>
    public IReadOnlyList<StayDocument>? Stays { get; set; }
    /// <summary>Visits whose time is past and that were not done: they are planned again.</summary>
    public IReadOnlyList<StayDocument>? NotDone { get; set; }
}

/// <summary>People who go to a site together.</summary>
public sealed record ShopCrewDocument
{
    /// <summary>What it is called.</summary>
    public string Name { get; set; } = "";
    /// <summary>What it can do beyond what every crew can, in the shop's own words, as <c>pour</c>.</summary>
    public IReadOnlyList<string>? Skills { get; set; }
    /// <summary>Dates on which it works for nobody.</summary>
    public IReadOnlyList<string>? Away { get; set; }
}

/// <summary>When a job takes a piece of gear.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<GearUse>))]
public enum GearUse
{
    /// <summary>From the day the tent goes up until it is cleared away, drying included.</summary>
    Tented,
    /// <summary>While surfaces or coats are sanded.</summary>
    Sanding,
    /// <summary>While primer or a coat goes on.</summary>
    Coating,
}

/// <summary>A tent, an extractor, a machine.</summary>
public sealed record ShopGearDocument
{
    /// <summary>What it is called.</summary>
    public string Name { get; set; } = "";
    /// <summary>How many there are.</summary>
    public int Count { get; set; } = 1;
    /// <summary>When a job takes one.</summary>
    public GearUse Use { get; set; }
}

/// <summary>The way between two jobs, the same both ways.</summary>
public sealed record WayDocument
{
    /// <summary>Id of a job.</summary>
    public string From { get; set; } = "";
    /// <summary>Id of the other.</summary>
    public string To { get; set; } = "";
    /// <summary>How long it takes.</summary>
    public Entry Time { get; set; } = "";
}

/// <summary>A day on which no coat goes on, as when the air is too humid.</summary>
public sealed record LostDayDocument
{
    /// <summary>The day, as <c>2026-12-09</c>.</summary>
    public string Date { get; set; } = "";
    /// <summary>Id of the job it is lost for; left out: at every site.</summary>
    public string? Job { get; set; }
}

/// <summary>What is asked of the days of one job.</summary>
public sealed record JobDaysDocument
{
    /// <summary>Id of the job.</summary>
    public string Job { get; set; } = "";
    /// <summary>It is not planned: done, or not ordered yet.</summary>
    public bool? LeaveOut { get; set; }
    /// <summary>What its crew must be able to do, in the words of the crews' skills; left out: any crew can.</summary>
    public string? Skill { get; set; }
    /// <summary>Not begun before this day; left out: the first day the job itself names.</summary>
    public string? NotBefore { get; set; }
    /// <summary>Its last visit has ended by the evening of this day.</summary>
    public string? EndBy { get; set; }
}

/// <summary>A visit at its time.</summary>
public sealed record StayDocument
{
    /// <summary>The visit, as <c>job/2</c>: id of the job and number of the visit.</summary>
    public string Visit { get; set; } = "";
    /// <summary>When it begins, as <c>2026-12-08T08:00</c> on the clock at the site.</summary>
    public string From { get; set; } = "";
    /// <summary>By which crew; left out: by any.</summary>
    public string? Crew { get; set; }
}

/// <summary>The days a shop has settled on. What was given out is frozen here, with the words it was given out in.</summary>
public sealed record SettledDaysDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; set; } = CurrentVersion;
    /// <summary>The number of the last settling: it only rises, and lies above the versions of the jobs in it, whose own calendars it takes the place of.</summary>
    public int Times { get; set; }
    /// <summary>Every visit, in order of time.</summary>
    public IReadOnlyList<VisitDocument> Visits { get; set; } = [];
}

/// <summary>One visit with its place.</summary>
public sealed record VisitDocument
{
    /// <summary>Id of the job.</summary>
    public string Job { get; set; } = "";
    /// <summary>Name of the job.</summary>
    public string Name { get; set; } = "";
    /// <summary>Number of the visit within its job, from 1.</summary>
    public int Number { get; set; }
    /// <summary>When it begins, as <c>2026-12-08T08:00</c> on the clock at the site.</summary>
    public string From { get; set; } = "";
    /// <summary>Minutes it takes.</summary>
    public int LengthMin { get; set; }
    /// <summary>Who comes.</summary>
    public Doer By { get; set; }
    /// <summary>Which crew; left out: none is needed.</summary>
    public string? Crew { get; set; }
    /// <summary>A coat goes on in it.</summary>
    public bool IsCoat { get; set; }
    /// <summary>The first coat that goes on in it, from 1; left out: none, or it is not known.</summary>
    public int? Coat { get; set; }
    /// <summary>IANA time zone of the site; left out: the clock on the wall.</summary>
    public string? Zone { get; set; }
    /// <summary>What is done, in English, a step a line.</summary>
    public string En { get; set; } = "";
    /// <summary>What is done, in Spanish, a step a line.</summary>
    public string Es { get; set; } = "";
    /// <summary>The settling at which it last changed: an event's sequence.</summary>
    public int Changed { get; set; }

    [JsonIgnore] public string Id => $"{Job}/{Number}";
    [JsonIgnore] public DateTime Begins => DateTime.ParseExact(From, DaysReading.Moment, System.Globalization.CultureInfo.InvariantCulture);
    [JsonIgnore] public DateTime Ends => Begins.AddMinutes(LengthMin);

    public IReadOnlyList<string> Steps(Voice voice) => voice.Say(En, Es).Split('\n');
}
