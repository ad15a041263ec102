using System.Diagnostics;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Scheduling;
using Lapwise.Server.Features.Jobs;
using Effort = Lapwise.Scheduling.Effort;

namespace Lapwise.Server.Features.Days;

/// <summary>
/// One search for days, in the background. It only reads the store: what was entered is there before it begins, and a restart
/// loses nothing but the search, which begun again with the same input gives the same answer.
/// </summary>
internal sealed class DaysSearch : IDisposable
{
    /// <summary>More jobs than this are not taken through their phases: that alone would take minutes.</summary>
    public const int MostJobs = 500;

    /// <summary>Looking on is so many times the effort of before, and so often it is offered.</summary>
    private const int LongerBy = 4;
    private const int MostLonger = 3;

    private readonly CancellationTokenSource stopping;
    private readonly Stopwatch watch = Stopwatch.StartNew();
    private readonly DaysInputs inputs;
    private readonly WorkedJobs worked;
    private readonly Voice voice;
    private readonly DaysSearch? before;
    private readonly List<(string Job, string Name, Phrase Why)> leftOut = [];
    private volatile IReadOnlyList<(string Job, string Name)> notFixed = [];
    private volatile Stand stand = new(DaysState.Reading, 0, 0, null, []);
    private IReadOnlyList<ShopJob> jobs = [];
    private Shop? shop;
    private ScheduleProblem? problem;

    /// <param name="Better">How many answers were found so far.</param>
    private sealed record Stand(DaysState State, int JobsRead, int Better, Schedule? Best, IReadOnlyList<Reason> Reasons);

    /// <param name="before">The same input with less effort, which had ended: what it found is not lost. Null: begun anew.</param>
    public DaysSearch(DaysInput input, DaysInputs inputs, WorkedJobs worked, Voice voice, CancellationToken ending, DaysSearch? before = null)
    {
        (Input, this.inputs, this.worked, this.voice, this.before) = (input, inputs, worked, voice, before);
        if (before is not null) (stand, Longer, jobs, shop, problem) = (stand with { Best = before.stand.Best }, before.Longer + 1, before.jobs, before.shop, before.problem);
        stopping = CancellationTokenSource.CreateLinkedTokenSource(ending);
        Ended = Task.Run(Run, CancellationToken.None);
    }

    public DaysInput Input { get; }

    public Task Ended { get; }

    public bool IsGoing => stand.State is DaysState.Reading or DaysState.Searching;

    /// <summary>An answer that the same input would give again; stopped by hand it is none.</summary>
    public bool Stands => stand.State is not DaysState.Stopped;

    public int Longer { get; }

    /// <summary>It ended with an open gap, or with nothing found.</summary>
    public bool CanLookOn => Longer < MostLonger && stand is { State: DaysState.Undecided } or { State: DaysState.Done, Best.IsProven: false };

    public void Stop()
    {
        if (!IsGoing) return;
        stopping.Cancel();
    }

    public void Dispose() => stopping.Dispose();

    private async Task Run()
    {
        try
        {
            await Search();
        }
        catch (OperationCanceledException)
        {
            stand = stand with { State = DaysState.Stopped };
        }
        catch (Exception e)
        {
            // Whatever a job holds must not leave a search that seems to go on for ever.
            stand = stand with { State = DaysState.Refused, Reasons = [Broke(e)] };
        }
        finally
        {
            watch.Stop();
        }
    }

    private async Task Search()
    {
        if (Input.Jobs.Count > MostJobs)
        {
            stand = stand with { State = DaysState.Refused, Reasons = [TooMany(Input.Jobs.Count)] };
            return;
        }

        var read = DaysReading.Read(Input.Entered, voice);
        if (read.Asks is not { } asks)
        {
            stand = stand with { State = DaysState.Refused, Reasons = [.. read.Faults.Select(AsReason)] };
            return;
        }

        jobs = await Read(stopping.Token);
        if (jobs.Count == 0)
        {
            stand = stand with { State = DaysState.Refused, Reasons = [NoJob] };
            return;
        }

        // What is past was worked with or without it.
        var kept = asks.Stays.Where(s => s.From >= Input.Tomorrow.ToDateTime(TimeOnly.MinValue)).Select(s => s.Visit[..s.Visit.LastIndexOf('/')]).ToHashSet(StringComparer.Ordinal);
        notFixed = await inputs.WithoutDeposit([.. jobs.Where(j => kept.Contains(j.Id)).Select(j => j.Id)], stopping.Token);
        var first = asks.First is { } asked && asked > Input.Tomorrow ? asked : Input.Tomorrow;
        shop = Shop.From(asks.After(Input.Settled.Where(v => jobs.Any(j => j.Id == v.Job)), Input.Tomorrow.ToDateTime(TimeOnly.MinValue)) with { First = first }, first);
        problem = ShopDays.Problem(jobs, shop, Input.Settled);
        problem = problem with { EndsFirst = Input.IsAfresh };
        stand = stand with { State = DaysState.Searching };
        var effort = Effort.Patient with { Deterministic = Effort.Patient.Deterministic * Math.Pow(LongerBy, Longer) };
        var answer = Scheduler.Solve(problem, effort, found => Take(WithBefore(found, isEnded: false)),
            without => stand = stand with { Reasons = [without] }, stopping.Token);
        stand = answer switch
        {
            Answer.Found(var found) when WithBefore(found, isEnded: !stopping.IsCancellationRequested) is var schedule =>
                stand with { State = stopping.IsCancellationRequested ? DaysState.Stopped : DaysState.Done, Best = schedule, Reasons = schedule.Reasons },
            Answer.Impossible(var reasons) => stand with { State = DaysState.Impossible, Best = null, Reasons = reasons },
            Answer.Refused(var reasons) => stand with { State = DaysState.Refused, Best = null, Reasons = reasons },
            Answer.Undecided(var reasons) => stand with { State = stopping.IsCancellationRequested ? DaysState.Stopped : DaysState.Undecided, Reasons = reasons },
            _ => throw new InvalidOperationException("an answer of another kind"),
        };
    }

    private void Take(Schedule better) =>
        stand = stand with { Best = better, Better = stand.Better + (better.Visits.SequenceEqual(stand.Best?.Visits ?? []) ? 0 : 1), Reasons = better.Reasons };

    /// <summary>What the search with less effort found stands until there is something better, and its bound and its offer for good.</summary>
    private Schedule WithBefore(Schedule found, bool isEnded)
    {
        if (before?.stand.Best is not { } had) return found;
        var endsFirst = Input.IsAfresh || Input.Settled.Count == 0;
        var best = (endsFirst ? had.LastEnd < found.LastEnd : !isEnded) ? had : found;
        var sooner = new[] { had.Sooner, found.Sooner }.OfType<Sooner>().Where(s => s.LastEnd < best.LastEnd).MinBy(s => s.LastEnd);
        return best with { Bound = Math.Max(had.Bound, found.Bound), Sooner = sooner, IsRepeatable = had.IsRepeatable && found.IsRepeatable };
    }

    private async Task<IReadOnlyList<ShopJob>> Read(CancellationToken stop)
    {
        List<ShopJob> found = [];
        var (library, mark) = await worked.Library(stop);
        foreach (var job in Input.Jobs)
        {
            stop.ThrowIfCancellationRequested();
            var (whole, faults) = await worked.Of(job, library, mark, stop);
            if (whole is { Timeline.Steps.Count: > 0 } && faults.Count == 0) found.Add(new ShopJob(job.Id, whole));
            else lock (leftOut) leftOut.Add((job.Id, job.Name, faults.Count > 0 ? v => $"{FieldWords.Of(faults[0].Path, v)}: {faults[0].Text(v)} {faults[0].Cure(v)}" : v => v.Say("Its tops, coats or room are not there yet.", "Aún faltan sus cubiertas, capas o sala.")));
            stand = stand with { JobsRead = stand.JobsRead + 1 };
        }

        worked.KeepOnly(Input.Jobs, mark);
        return found;
    }

    /// <summary>The visits of the best so far; empty: none is found yet.</summary>
    public IReadOnlyList<VisitDocument> Visits => stand.Best is { } best && shop is { } at ? ShopDays.Written(jobs, at, best) : [];

    public DaysAnswer Say(Voice v, bool isOld)
    {
        var now = stand;
        string? When(long? minute) => minute is { } m && shop is { } at ? ShopDays.At(at, m).ToString(DaysReading.Moment, System.Globalization.CultureInfo.InvariantCulture) : null;
        var best = now.Best;
        return new DaysAnswer(
            now.State, Input.Mark, isOld, now.JobsRead, Input.Jobs.Count, watch.Elapsed.TotalSeconds, now.Better,
            When(best?.LastEnd), When(best?.Bound), best?.Gap, best is { IsProven: true }, best is { IsRepeatable: true } && now.State != DaysState.Stopped,
            Visits, Moves(best, v), ReasonAnswer.Of(now.Reasons, v), LeftOut(v))
        {
            IsAfresh = Input.IsAfresh,
            Longer = Longer,
            CanLookOn = CanLookOn,
            Notes = best is null || problem is null || shop is not { } of ? [] : ReasonAnswer.Of(ShopNotes.Of(jobs, of, problem, best), v),
            Sooner = best?.Sooner is { } sooner ? SoonerThan(best, sooner, v, When(sooner.LastEnd)!) : null,
            NotFixed = [.. notFixed.Select(j => new JobLeftOutAnswer(j.Job, j.Name, v.Say("its deposit is not in; the date is not fixed. Kept in place all the same, at your word.", "su anticipo no ha entrado; la fecha no está fijada. Se mantiene igualmente, bajo su palabra.")))],
        };
    }

    private IReadOnlyList<JobLeftOutAnswer> LeftOut(Voice v)
    {
        lock (leftOut) return [.. leftOut.Select(l => new JobLeftOutAnswer(l.Job, l.Name, l.Why(v)))];
    }

    private IReadOnlyList<VisitMoveAnswer> Moves(Schedule? best, Voice v)
    {
        if (best is null || problem is null || shop is not { } at) return [];
        string When(long minute) => ShopDays.At(at, minute).ToString(DaysReading.Moment, System.Globalization.CultureInfo.InvariantCulture);
        string? Crew(int? crew) => crew is { } c && c < at.Asks.Crews.Count ? at.Asks.Crews[c].Name : null;
        var does = ShopDays.Visits(jobs).Select(x => ShopDays.Does(x.Job.Whole.Timeline, x.Visit)).ToList();
        return [.. Scheduling.Moves.Since(problem, best.Visits, (visit, minute) => ShopDays.Shut(jobs, at, visit, minute)).OrderBy(m => m.To.Start).Select(m => new VisitMoveAnswer(
            problem.Visits[m.Visit].Id, problem.Visits[m.Visit].JobName, does[m.Visit](v), When(m.From.Start), Crew(m.From.Crew), When(m.To.Start), Crew(m.To.Crew), m.Why(v)))];
    }

    private SoonerAnswer SoonerThan(Schedule best, Sooner sooner, Voice v, string lastEnd)
    {
        var (by, more) = (Voice.Span((best.LastEnd - sooner.LastEnd) * 60.0), problem!.Moved(best.Visits));
        string Visits(int count) => v.Count(count, ("settled visit", "settled visits"), ("visita acordada", "visitas acordadas"));
        return new SoonerAnswer(lastEnd, sooner.Moved, v.Say(
            $"All could end {by} sooner if {Visits(sooner.Moved)} moved instead of {v.Number(more)}.",
            $"Todos podrían acabar {by} antes si se movieran {Visits(sooner.Moved)} en lugar de {v.Number(more)}."));
    }

    private static Reason AsReason(Fault fault) => new(fault.Code, Limit.Never, v => $"{fault.Path}: {fault.Text(v)}", fault.Cure);

    private static Reason TooMany(int count) => new("TooManyJobs", Limit.Never,
        v => v.Say($"{count} jobs are asked for; at most {MostJobs} are planned together.", $"Se piden {count} trabajos; como mucho se planifican {MostJobs} juntos."),
        v => v.Say("Leave out those that are done or not ordered yet.", "Deje fuera los terminados o aún no encargados."));

    private static readonly Reason NoJob = new("NoJob", Limit.Never,
        v => v.Say("There is no job that could be planned.", "No hay ningún trabajo que se pueda planificar."),
        v => v.Say("Enter a job with its tops, coats and room, or take one back in.", "Anote un trabajo con sus cubiertas, capas y sala, o vuelva a incluir uno."));

    private static Reason Broke(Exception e) => new("SearchBroke", Limit.Never,
        v => v.Say($"The search broke off: {e.Message}", $"La búsqueda se interrumpió: {e.Message}"),
        v => v.Say("Nothing entered is lost. Leave out the job changed last, and try again.", "No se pierde nada de lo anotado. Deje fuera el último trabajo cambiado y reintente."));
}
