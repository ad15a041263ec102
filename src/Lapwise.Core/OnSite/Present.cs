using Lapwise.Core.Explain;

namespace Lapwise.Core.OnSite;

/// <summary>This minute: what each person does, what runs out next, what comes after.</summary>
/// <param name="NextLap">The lap that runs out first; null: none is open.</param>
/// <param name="Cups">Batches that are mixed and not used up, the first mixed first; empty: nothing is mixed.</param>
/// <param name="Steps">Steps beside rolling whose window is open, is over, or comes within the next minutes.</param>
public sealed record Present(
    long NowMs,
    IReadOnlyList<PersonNow> People,
    RunningLap? NextLap,
    IReadOnlyList<ForecastBatch> Cups,
    IReadOnlyList<DueStep> Steps,
    Forecast Forecast,
    long? PausedSince,
    bool IsDone);

/// <param name="LeftMs">Until it should be done; below 0: it is over its time. Null where there is no time to keep.</param>
/// <param name="Then">What comes after.</param>
public sealed record PersonNow(int Person, Duty Now, long? LeftMs, Duty Then);

/// <summary>What one person does.</summary>
public abstract record Duty
{
    private Duty() { }

    /// <summary>Being rolled.</summary>
    public sealed record Rolling(IssuedSection Section, bool IsAssumed) : Duty;
    /// <summary>To be begun now.</summary>
    /// <param name="Batch">The one it is rolled from.</param>
    public sealed record Begin(IssuedSection Section, string Batch) : Duty;
    /// <summary>A and B are together and are being mixed.</summary>
    public sealed record Mixing(ForecastBatch Batch) : Duty;
    /// <summary>To be mixed now.</summary>
    public sealed record Mix(ForecastBatch Batch) : Duty;
    /// <summary>Nothing until then.</summary>
    public sealed record Wait(long UntilMs, Duty For) : Duty;
    /// <summary>Nothing more in this run.</summary>
    public sealed record Over : Duty;
}

/// <summary>A lap with one side wet.</summary>
/// <param name="JoinedBy">The section that has to be done; null: both are being rolled.</param>
/// <param name="LeftMs">Until the film has set; below 0: it has.</param>
/// <param name="BeginWithinMs">Until the joining section has to be begun; null: it is.</param>
public sealed record RunningLap(IssuedLap Lap, IssuedSection? JoinedBy, long LeftMs, long? BeginWithinMs);

/// <param name="OpensInMs">Above 0: not yet.</param>
/// <param name="LeftMs">Until its window closes; null: it does not.</param>
public sealed record DueStep(IssuedStep Step, long OpensInMs, long? LeftMs);

/// <summary>What a run comes to at one time.</summary>
public static class Presenting
{
    private const long Soon = 5 * 60_000;
    private const long AtOnce = 1_000;
    private const long Idle = 5_000;

    /// <param name="nowMs">In the run's time.</param>
    public static Present Present(Run run, long nowMs)
    {
        var pace = PaceSeen.Of(run);
        var forecast = Forecasting.Of(run, pace, nowMs, run.Turns);
        return new Present(
            nowMs, [.. PeopleOf(run).Select(p => Of(run, forecast, p))], NextLap(run, pace, forecast),
            [.. forecast.Batches.Where(b => b.IsOpen)], DueSteps(run, nowMs), forecast, run.PausedSince, run.IsDone);
    }

    /// <summary>Everybody who has something to do in the run; a helper without a part is left out.</summary>
    private static IEnumerable<int> PeopleOf(Run run) => run.Plan.Batches.Select(b => b.MixedBy)
        .Concat(run.Turns.Select(t => t.Person)).Concat(run.Sections.Values.Select(s => s.Person))
        .Where(p => p >= 0 && p < run.Plan.Crew.Count).Distinct().Order();

    private static PersonNow Of(Run run, Forecast forecast, int person)
    {
        var now = forecast.NowMs;
        var jobs = forecast.Sections.Where(s => s.Person == person && s.Progress is Progress.Ahead).Select(s => (s.StartMs, Job: (Duty)new Duty.Begin(s.Section, s.Batch)))
            .Concat(forecast.Batches.Where(b => b.Person == person && !b.IsMixed).Select(b => (b.StartMs, Job: (Duty)new Duty.Mix(b))))
            .OrderBy(j => j.StartMs).ToList();
        if (forecast.Sections.LastOrDefault(s => s.Person == person && s.Progress is Progress.Wet) is { } rolling)
            return new PersonNow(person, new Duty.Rolling(rolling.Section, run.Sections[rolling.Section.Id].IsAssumed), LeftOf(run, rolling, now), After(0, rolling.EndMs));
        if (forecast.Batches.LastOrDefault(b => b.Person == person && b.IsMixed) is { } mixing && FreeMs(mixing) is var free && free > now && !forecast.Sections.Any(s => s.Batch == mixing.Id && s.Progress is not Progress.Ahead))
            return new PersonNow(person, new Duty.Mixing(mixing), free - now, After(0, free));
        if (jobs.Count == 0) return new PersonNow(person, new Duty.Over(), null, new Duty.Over());
        var (start, next) = jobs[0];
        return start <= now + AtOnce
            ? new PersonNow(person, next, null, After(1, long.MaxValue - Idle))
            : new PersonNow(person, new Duty.Wait(start, next), start - now, next);

        // While a batch stands the next is mixed.
        long FreeMs(ForecastBatch mixing) => jobs is [(var mixMs, Duty.Mix), ..] ? Math.Min(mixMs, mixing.ReadyMs) : mixing.ReadyMs;

        Duty After(int place, long freeMs) =>
            place >= jobs.Count ? new Duty.Over() : jobs[place].StartMs > freeMs + Idle ? new Duty.Wait(jobs[place].StartMs, jobs[place].Job) : jobs[place].Job;
    }

    private static long LeftOf(Run run, ForecastSection rolling, long now)
    {
        var due = rolling.StartMs + PaceSeen.Of(run).TimeOf(rolling.Section, rolling.Person) + run.HaltedMs(rolling.StartMs, now);
        return due - now;
    }

    private static RunningLap? NextLap(Run run, PaceSeen pace, Forecast forecast)
    {
        if (forecast.Laps.Where(l => l.Standing is LapStage.Open).OrderBy(l => l.SinceMs).ThenBy(l => l.Lap.A, StringComparer.Ordinal).FirstOrDefault() is not { } lap) return null;
        var left = lap.SinceMs + run.OpenTimeMs - forecast.NowMs;
        var joining = forecast.Sections.FirstOrDefault(s => (s.Section.Id == lap.Lap.A || s.Section.Id == lap.Lap.B) && s.Progress is Progress.Ahead);
        return new RunningLap(lap.Lap, joining?.Section, left, joining is null ? null : left - pace.TimeOf(joining.Section, joining.Person));
    }

    private static IReadOnlyList<DueStep> DueSteps(Run run, long nowMs)
    {
        var due = new List<DueStep>();
        foreach (var step in run.Plan.Steps.Where(s => !run.StepsDone.ContainsKey(s.Id)))
        {
            var with = step.With.Where(id => !run.Left.Contains(id)).ToList();
            if (with.Count == 0 || with.Exists(id => step.FromBegun == true ? !run.IsBegun(id) : !run.IsDry(id))) continue;
            var since = with.Max(id => step.FromBegun == true ? run.Sections[id].WetAtMs : run.Sections[id].DryAtMs!.Value);
            var opens = since + step.FromMs - nowMs;
            if (opens <= Soon) due.Add(new DueStep(step, opens, since + step.ToMs - nowMs));
        }

        return [.. due.OrderBy(d => Math.Max(0, d.OpensInMs)).ThenBy(d => d.LeftMs ?? long.MaxValue).ThenBy(d => d.Step.Id, StringComparer.Ordinal)];
    }
}

/// <summary>What a pause from now would cost.</summary>
/// <param name="AfterMs">After a pause of this length it is lost.</param>
public sealed record PauseCost(IssuedLap? Lap, string? Batch, long AfterMs);

public static class Pausing
{
    /// <summary>Laps with a wet side and the batch in use, the first to be lost first; what is lost already is left out.</summary>
    public static IReadOnlyList<PauseCost> CostOf(Run run, long nowMs)
    {
        var forecast = Forecasting.Of(run, PaceSeen.Of(run), nowMs, run.Turns);
        var laps = forecast.Laps.Where(l => l.Standing is LapStage.Open && l.MarginMs >= 0).Select(l => new PauseCost(l.Lap, null, l.MarginMs));
        var batches = forecast.Batches.Where(b => b.IsMixed && b.LastUsedMs > nowMs && b.UseByMs >= b.LastUsedMs).Select(b => new PauseCost(null, b.Id, b.UseByMs - b.LastUsedMs));
        return [.. laps.Concat(batches).OrderBy(c => c.AfterMs)];
    }

    public static string Say(PauseCost cost, Voice v) => cost.Lap is { } lap
        ? v.Say($"after {Voice.Span(cost.AfterMs / 1000)} the lap {MarkWords.Of(lap)} is lost", $"pasados {Voice.Span(cost.AfterMs / 1000)} se pierde el solape {MarkWords.Of(lap)}")
        : v.Say($"after {Voice.Span(cost.AfterMs / 1000)} batch {cost.Batch} is past its use", $"pasados {Voice.Span(cost.AfterMs / 1000)} la mezcla {cost.Batch} ya no se puede usar");
}
