using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Scheduling;

/// <summary>What is worth knowing of days that hold: what is kept against the hours at somebody's own word, and households that go without for long.</summary>
public static class ShopNotes
{
    /// <summary>A weekend more than a job by itself would take is nothing to be told of.</summary>
    private const int DaysNotTold = 2;

    public static IReadOnlyList<Reason> Of(IReadOnlyList<ShopJob> jobs, Shop shop, ScheduleProblem problem, Schedule schedule) =>
        [.. KeptAgainstHours(shop, problem), .. jobs.Select((job, i) => Opened(job, shop, problem, schedule)).OfType<Reason>()];

    private static IEnumerable<Reason> KeptAgainstHours(Shop shop, ScheduleProblem problem) =>
        problem.Visits.Where(v => v.Locked is { Said: not null } locked && ShopDays.At(shop, locked.Start) >= shop.Today.ToDateTime(TimeOnly.MinValue) && !Kept.IsInHours(v))
            .Select(visit => new Reason("KeptAtYourWord", Limit.AtYourWord,
                v => v.Say($"Kept in place at your own word: {visit.Name(v)}, {visit.Locked!.Said!(v)}.", $"Se mantiene en su sitio bajo su palabra: {visit.Name(v)}, {visit.Locked!.Said!(v)}."),
                v => v.Say("If that is not meant, let it move.", "Si no es lo que quiere, deje que se mueva.")));

    /// <summary>Null: not markedly longer than the job takes by itself.</summary>
    private static Reason? Opened(ShopJob job, Shop shop, ScheduleProblem problem, Schedule schedule)
    {
        // The last stretch of a job is the one without its sink, where it has one.
        if (problem.Stretches.Where(s => problem.Visits[s.From].Job == job.Id).Select(s => (Stretch?)s).LastOrDefault() is not { } stretch) return null;
        var first = problem.Visits.ToList().FindIndex(v => v.Job == job.Id);
        var own = Core.Timeline.SiteVisits.Of(job.Whole.Timeline);
        var byItself = own[stretch.To - first].From - own[stretch.From - first].From;
        var (from, to) = (ShopDays.At(shop, schedule.Visits[stretch.From].Start), ShopDays.At(shop, schedule.Visits[stretch.To].Start));
        var (here, alone) = (Days(to - from), Days(byItself));
        if (here - alone <= DaysNotTold) return null;
        var hasSink = job.Whole.Timeline.Steps.Any(s => s.Kind == SiteStep.TakeOut);
        return new Reason("LongWithout", Limit.Note,
            v => v.Say(
                $"{job.Whole.Job.Name}: {(hasSink ? "without its fixtures" : "the room is taken up")} for {Said(v, here)}, from {Day(v, from)} to {Day(v, to)}; by itself the job takes {Said(v, alone)}, that is {Said(v, here - alone)} longer.",
                $"{job.Whole.Job.Name}: {(hasSink ? "sin sus aparatos" : "la sala está ocupada")} durante {Said(v, here)}, del {Day(v, from)} al {Day(v, to)}; por sí solo el trabajo tarda {Said(v, alone)}, es decir, {Said(v, here - alone)} más."),
            v => hasSink
                ? v.Say("A limit in its field “Longest without sink and cooktop”, another crew or more gear would shorten it.", "Lo acortaría un límite en su campo «Máximo sin fregadero ni placa», otro equipo o más medios.")
                : v.Say("A later first day for it, another crew or more gear would shorten it.", "Lo acortaría un primer día posterior, otro equipo o más medios."));
    }

    private static int Days(TimeSpan span) => (int)Math.Round(span.TotalDays);

    private static string Said(Voice v, int days) => v.Count(days, ("day", "days"), ("día", "días"));

    private static string Day(Voice v, DateTime at) => v.WeekDay(DateOnly.FromDateTime(at));
}
