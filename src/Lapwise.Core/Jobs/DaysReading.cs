using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What was entered of many jobs' days, read.</summary>
/// <param name="First">Null: left out.</param>
/// <param name="Crews">At least one.</param>
public sealed record DaysAsks(
    DateOnly? First, int DaysAhead, IReadOnlyList<CrewAsk> Crews, IReadOnlyList<GearAsk> Gear, int BetweenSitesMin, IReadOnlyList<WayAsk> Ways,
    IReadOnlyList<LostAsk> Lost, IReadOnlyDictionary<string, JobDaysAsk> Jobs, IReadOnlyList<StayAsk> Stays, IReadOnlyList<StayAsk> NotDone)
{
    /// <summary>With the visits that are past as visits that stay; those that were not done are planned again.</summary>
    /// <param name="before">What began before it is past.</param>
    public DaysAsks After(IEnumerable<VisitDocument> settled, DateTime before) => this with
    {
        Stays =
        [
            .. Stays, .. settled.Where(v => v.Begins < before && Stays.All(s => s.Visit != v.Id) && !NotDone.Any(n => n.Visit == v.Id && n.From == v.Begins))
                .Select(v => new StayAsk(v.Id, v.Begins, v.Crew)),
        ],
    };
}

public sealed record CrewAsk(string Name, IReadOnlyList<string> Skills, IReadOnlyList<DateOnly> Away);

public sealed record GearAsk(string Name, int Count, GearUse Use);

public sealed record WayAsk(string From, string To, int Minutes);

/// <param name="Job">Null: at every site.</param>
public sealed record LostAsk(DateOnly Date, string? Job);

public sealed record JobDaysAsk(bool IsLeftOut, string? Skill, DateOnly? NotBefore, DateOnly? EndBy)
{
    public static readonly JobDaysAsk Nothing = new(IsLeftOut: false, null, null, null);
}

/// <param name="Crew">Null: any.</param>
public sealed record StayAsk(string Visit, DateTime From, string? Crew);

public sealed record DaysRead(DaysAsks? Asks, IReadOnlyList<Fault> Faults);

/// <summary>Reads crews, gear and days lost, or says every fault; a plan is never made from what was misread.</summary>
public static class DaysReading
{
    /// <summary>How the beginning of a visit is written.</summary>
    public const string Moment = "yyyy-MM-dd'T'HH:mm";
    public const int UsualDaysAhead = 180;
    public const int UsualBetweenSitesMin = 30;
    private const int MostCrews = 20;
    private const int MostDaysAhead = 730;
    private const int MostListed = 1000;
    private static readonly Bounds WayTime = new(0, 86400, (_, s) => Voice.Span(s));

    public static DaysRead Read(DaysDocument document, Voice voice)
    {
        ArgumentNullException.ThrowIfNull(document);
        var skills = new Spelling();
        if (DocumentVersion.Refuse("lapwise", document.Lapwise, DaysDocument.CurrentVersion) is { } refused) return new DaysRead(null, [refused]);
        var fields = new Fields(voice.Units);
        var asks = new DaysAsks(
            fields.DayOrNull("first", document.First),
            Whole(fields, "daysAhead", document.DaysAhead ?? UsualDaysAhead, 1, MostDaysAhead),
            Crews(fields, document.Crews, skills, voice), Gear(fields, document.Gear),
            Minutes(Fields.OrNull(document.BetweenSites, e => fields.Time("betweenSites", e, WayTime)) ?? UsualBetweenSitesMin * 60),
            [.. fields.Items("ways", document.Ways, MostListed).Select(w => new WayAsk(w.Item.From, w.Item.To, Minutes(fields.Time(w.Path + ".time", w.Item.Time, WayTime))))],
            [.. fields.Items("lost", document.Lost, MostListed).Select(l => new LostAsk(fields.Day(l.Path + ".date", l.Item.Date), Blank(l.Item.Job)))],
            Jobs(fields, document.Jobs, skills), [.. fields.Items("stays", document.Stays, MostListed).Select(s => Stay(fields, s.Item, s.Path))],
            [.. fields.Items("notDone", document.NotDone, MostListed).Select(s => Stay(fields, s.Item, s.Path))]);
        SkillsAreThere(fields, document, asks);
        return fields.Count > 0 ? new DaysRead(null, fields.Faults) : new DaysRead(asks, []);
    }

    private static IReadOnlyList<CrewAsk> Crews(Fields fields, IReadOnlyList<ShopCrewDocument>? entered, Spelling skills, Voice voice)
    {
        if (entered is not { Count: > 0 }) return [new CrewAsk(voice.Say("crew 1", "equipo 1"), [], [])];
        var names = Fields.NoNames();
        return [.. fields.Items("crews", entered, MostCrews).Select(c => new CrewAsk(
            fields.UniqueName(c.Path + ".name", c.Item.Name, names),
            [.. (c.Item.Skills ?? []).Select(s => s.Trim()).Where(s => s.Length > 0).Select(skills.Of)],
            [.. fields.Items(c.Path + ".away", c.Item.Away, Ranges.MostDaysOff).Select(d => fields.Day(d.Path, d.Item))]))];
    }

    private static IReadOnlyList<GearAsk> Gear(Fields fields, IReadOnlyList<ShopGearDocument>? entered)
    {
        var names = Fields.NoNames();
        return [.. fields.Items("gear", entered, Ranges.MostFixtures).Select(g => new GearAsk(
            fields.UniqueName(g.Path + ".name", g.Item.Name, names), Whole(fields, g.Path + ".count", g.Item.Count, 0, MostListed), g.Item.Use))];
    }

    private static Dictionary<string, JobDaysAsk> Jobs(Fields fields, IReadOnlyList<JobDaysDocument>? entered, Spelling skills)
    {
        var asks = new Dictionary<string, JobDaysAsk>(StringComparer.Ordinal);
        foreach (var (job, path) in fields.Items("jobs", entered, 10 * MostListed))
        {
            var (notBefore, endBy) = (fields.DayOrNull(path + ".notBefore", job.NotBefore), fields.DayOrNull(path + ".endBy", job.EndBy));
            if (endBy < notBefore)
            {
                fields.Add(path + ".endBy", "EndsBeforeItBegins",
                    v => v.Say($"{v.Date(endBy!.Value)} is before {v.Date(notBefore!.Value)}, the day it may begin.", $"El {v.Date(endBy!.Value)} es anterior al {v.Date(notBefore!.Value)}, el día en que puede empezar."),
                    v => v.Say("Check both days.", "Revise los dos días."));
            }

            asks[job.Job] = new JobDaysAsk(job.LeaveOut ?? false, Blank(job.Skill) is { } skill ? skills.Of(skill) : null, notBefore, endBy);
        }

        return asks;
    }

    private static StayAsk Stay(Fields fields, StayDocument stay, string path)
    {
        if (DateTime.TryParseExact(stay.From, Moment, CultureInfo.InvariantCulture, DateTimeStyles.None, out var from)) return new StayAsk(stay.Visit, from, Blank(stay.Crew));
        fields.Add(path + ".from", "MomentNotRead",
            v => v.Say($"{Misreads.Quote(v, stay.From)} is not a day and an hour.", $"{Misreads.Quote(v, stay.From)} no es un día y una hora."),
            v => v.Say("Write them as 2026-12-08T08:00.", "Escríbalos como 2026-12-08T08:00."));
        return new StayAsk(stay.Visit, default, null);
    }

    private static void SkillsAreThere(Fields fields, DaysDocument document, DaysAsks asks)
    {
        for (var i = 0; i < (document.Jobs?.Count ?? 0); i++)
        {
            if (document.Jobs![i] is not { } job || Blank(job.Skill) is not { } skill || asks.Crews.Any(c => c.Skills.Contains(skill, StringComparer.OrdinalIgnoreCase))) continue;
            fields.Add($"jobs[{i}].skill", "NobodyCan",
                v => v.Say($"No crew can do {Misreads.Quote(v, skill)}.", $"Ningún equipo sabe {Misreads.Quote(v, skill)}."),
                v => v.Say("Give a crew that skill, or take it off the job.", "Dé esa capacidad a un equipo, o quítela del trabajo."));
        }
    }

    private static int Whole(Fields fields, string path, int value, int least, int most)
    {
        if (value >= least && value <= most) return value;
        fields.Add(path, "CountOutOfRange",
            v => v.Say($"{value} cannot be planned with.", $"Con {value} no se puede planificar."),
            v => v.Say($"Enter {least} to {most}.", $"Anote de {least} a {most}."));
        return least;
    }

    private static int Minutes(double seconds) => double.IsNaN(seconds) ? 0 : (int)Math.Ceiling(seconds / 60);

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    /// <summary>A skill is spelled as it was first, so that a capital letter makes no other skill of it.</summary>
    private sealed class Spelling
    {
        private readonly HashSet<string> known = new(StringComparer.OrdinalIgnoreCase);

        public string Of(string word)
        {
            known.Add(word);
            return known.TryGetValue(word, out var first) ? first : word;
        }
    }
}
