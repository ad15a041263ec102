using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;

namespace Lapwise.Core.Timeline;

/// <summary>Which days, with which recoat windows?</summary>
public static class Timing
{
    /// <summary>The earliest days on which every window is met; a window that cannot be met is answered and said.</summary>
    /// <param name="settled">The visits of this job that its shop has settled on; null or none: the job is by itself.</param>
    public static JobTimeline Time(Job job, MeasuredJob measured, JobConditions conditions, JobWork work, IReadOnlyList<VisitDocument>? settled = null)
    {
        var asks = job.Timeline;
        var layers = new Layers(job, measured);
        if (layers.Outermost.Count == 0 || work.Coats.Count < job.System.Count || !double.IsFinite(job.Room.Surface.Celsius)) return JobTimeline.Nothing(asks);

        var calendar = new WorkCalendar(asks);
        var waits = new RoomWaits(job.Room, asks);
        List<Reason> reasons = [.. TimelineReasons.Of(job, measured, layers, conditions, work)];
        // The film's own windows first: sanding must not be put in for the sake of a customer's limit.
        var (eased, found) = Ease(job, measured, layers, work, waits, calendar, reasons);
        var (steps, links) = DraftSteps.Of(job, measured, layers, work, waits, eased with { GoesWithout = false });
        switch (EarliestPass.Run(calendar, Lengths(steps), links))
        {
            case EarliestPass.Outcome.Found kept:
                found = kept;
                break;
            case EarliestPass.Outcome.NoneThereIs(var cycle):
                var without = links.Single(l => l.Kind == LinkKind.Without);
                reasons.Add(TimelineReasons.Contradict(cycle, asks, 60.0 * (found.Steps[without.To].Start - without.NotAfter!(found.Steps[without.From].End))));
                (steps, links) = DraftSteps.Of(job, measured, layers, work, waits, eased);
                break;
        }

        var own = Told(job, layers, calendar, waits, steps, links, found, eased, reasons);
        if (settled is not { Count: > 0 }) return own;
        var pass = new SettledPass(own, asks, settled);
        var (placed, against) = pass.Place(links);
        if (placed is null) return OutOfDate(own, TimelineReasons.OutOfDate(settled, against!));
        return Told(job with { Timeline = pass.Asks }, layers, pass.Calendar, waits, steps, links, found with { Steps = placed }, eased, reasons) with { IsSettled = true };
    }

    private static JobTimeline OutOfDate(JobTimeline own, Reason reason) => own with { OutOfDate = reason, Reasons = [.. own.Reasons.Prepend(reason).OrderBy(r => r.Limit)] };

    /// <summary>Gives way in a window that cannot be met: sanding in place of a latest recoat, else the masking comes off late.</summary>
    private static (Eased Eased, EarliestPass.Outcome.Found Found) Ease(Job job, MeasuredJob measured, Layers layers, JobWork work, RoomWaits waits, WorkCalendar calendar, List<Reason> reasons)
    {
        var eased = Eased.Nothing;
        while (true)
        {
            var (steps, links) = DraftSteps.Of(job, measured, layers, work, waits, eased);
            var outcome = EarliestPass.Run(calendar, Lengths(steps), links);
            if (outcome is EarliestPass.Outcome.Found found) return (eased, found);
            var cycle = ((EarliestPass.Outcome.NoneThereIs)outcome).Cycle;
            if (cycle.FirstOrDefault(l => l.Kind == LinkKind.Recoat && l.NotAfter is not null) is { } recoat)
            {
                eased = eased with { Sanded = new HashSet<(int, int)>(eased.Sanded) { (steps[recoat.From].Coat!.Value, steps[recoat.To].Coat!.Value) } };
            }
            else
            {
                if (eased.PullsLate) throw new InvalidOperationException("a cycle without a latest");
                reasons.Add(TimelineReasons.PullsLate);
                eased = eased with { PullsLate = true };
            }
        }
    }

    private static IReadOnlyList<StepLength> Lengths(IReadOnlyList<DraftStep> steps) => [.. steps.Select(s => new StepLength((long)Math.Ceiling(s.Seconds / 60), s.Splits))];

    private static JobTimeline Told(Job job, Layers layers, WorkCalendar calendar, RoomWaits waits, IReadOnlyList<DraftStep> steps, IReadOnlyList<Link> links, EarliestPass.Outcome.Found found, Eased eased, IReadOnlyList<Reason> known)
    {
        List<Reason> reasons = [.. known];
        var placed = found.Steps;
        var planned = steps.Select((s, i) => new PlannedStep(s.Kind, s.Name, s.How, s.By, s.Coat, s.Hands,
            [.. placed[i].Parts.Select(p => (calendar.At(p.From), calendar.At(p.To)))], s.TimeBasis, s.Cautions, s.IsInserted)).ToList();
        var between = links.Where(l => l.Name is not null && l.Kind != LinkKind.Without)
            .Select(l => (Link: l, End: placed[l.From].End))
            .Select(l => new PlannedWait(l.Link.Name!, l.Link.From, l.Link.To, calendar.At(l.End), calendar.At(l.Link.NotBefore(l.End)),
                l.Link.NotAfter is { } latest ? calendar.At(latest(l.End)) : null, l.Link.Basis!(l.End))
            {
                AtAnyHour = new Lazy<WaitAtAnyHour>(() => AtAnyHour(l.Link)),
            })
            .ToList();
        List<LastFilm> films = [.. layers.Outermost.Select(coat => (Coat: coat, Step: steps.ToList().FindIndex(s => s.Kind == SiteStep.Coat && s.Coat == coat))).Select(c => new LastFilm(job.System[c.Coat], c.Step, placed[c.Step].End))];
        var uses = Uses(films, calendar, waits);
        foreach (var (coat, before) in eased.Sanded.Order()) reasons.Add(TimelineReasons.Sanded(coat, before, steps, job.Timeline));
        if (steps.Select((s, i) => (s, i)).FirstOrDefault(s => !s.s.Splits && s.s.Seconds > calendar.HoursMin * 60) is { s: { } tooLong }) reasons.Add(TimelineReasons.LongerThanDay(tooLong, calendar));
        if (TimelineReasons.Late(job.Timeline, uses, steps, links, found, films, waits) is { } late) reasons.Add(late);

        var hours = (int)Math.Min(24L * 60, (placed.Max(p => p.End) / 60) + 24);
        return new JobTimeline(job.Timeline.Start is not null, calendar.Day0, planned, between, uses,
            [.. Enumerable.Range(0, hours + 1).Select(h => waits.TopC(h * 60L))], [.. reasons.OrderBy(r => r.Limit)])
        {
            DaysNotWorked = [.. Enumerable.Range(0, (int)(placed.Max(p => p.End) / WorkCalendar.DayMin) + 1).Where(d => !calendar.IsWorked(d)).Select(d => d + 1)],
        };
    }

    private static WaitAtAnyHour AtAnyHour(Link link) => new(
        TimeSpan.FromMinutes(AnyHour.Max(end => link.NotBefore(end) - end)),
        link.NotAfter is { } latest ? TimeSpan.FromMinutes(AnyHour.Min(end => latest(end) - end)) : null);

    /// <summary>An end in every hour of a day.</summary>
    private static readonly IReadOnlyList<long> AnyHour = [.. Enumerable.Range(0, 24).Select(h => WorkCalendar.DayMin + (h * 60L))];

    /// <summary>A use begins when the last of the films is hard enough for it; where the sheet of one does not tell, neither is it told of the job.</summary>
    private static List<UseDate> Uses(IReadOnlyList<LastFilm> films, WorkCalendar calendar, RoomWaits waits) =>
    [
        .. films.SelectMany(film => waits.After(film.Product, film.End).Where(w => Use(w.For) is not null).Select(w => UseDateOf(film, w, calendar)))
            .GroupBy(u => u.Use).Where(uses => uses.Count() == films.Count).Select(uses => uses.MaxBy(u => u.From)!),
    ];

    private static UseDate UseDateOf(LastFilm film, Wait wait, WorkCalendar calendar) => new(
        Use(wait.For)!.Value, calendar.At(film.End + (long)Math.Ceiling(wait.Seconds!.Value / 60)), film.IsGuess ? Origin.Guess : Origin.DataSheet,
        film.IsGuess ? wait.Basis with { Source = Sources.CautiousGuess } : wait.Basis);

    private static UseOf? Use(WaitFor what) => what switch
    {
        WaitFor.LightUse => UseOf.LightUse,
        WaitFor.Water => UseOf.Water,
        WaitFor.FullUse => UseOf.HeavyUse,
        WaitFor.FullCure => UseOf.FullCure,
        _ => null,
    };
}

/// <summary>The last coat on some of the tops, as it lies there.</summary>
/// <param name="Step">Place of its step.</param>
/// <param name="End">Minute of the calendar.</param>
internal sealed record LastFilm(Coat Coat, int Step, long End)
{
    public bool IsGuess => Coat.Product.UsableFrom is null;
    public Product Product => DraftSteps.Used(Coat);
}
