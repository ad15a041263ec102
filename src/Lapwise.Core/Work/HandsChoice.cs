using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work;

/// <summary>
/// Chooses who rolls a coat. One person rolls where that keeps the target margin, since one hand to a visible face is
/// simplest, and a helper mixes; only where nobody keeps it alone do two roll, and more only where two do not keep it either.
/// </summary>
internal sealed class HandsChoice(Job job, CoatConditions conditions, TopWays ways, Effort effort)
{
    public async ValueTask<CoatWork> PlanAsync(MeasuredJob measured)
    {
        var best = await AloneAsync(measured);
        if (!best.Works)
        {
            foreach (var hands in Hands.Together(job.Crew))
            {
                // What breaks a batch is no measure for what keeps it.
                var youngerThanMs = best.Schedule.KeepsBatches ? best.Schedule.WorstAgeMs : long.MaxValue;
                if (await TryAsync(hands, measured, youngerThanMs) is not { } tried || !tried.Schedule.IsBetterThan(best.Schedule)) continue;
                best = tried;
                if (best.Works) break;
            }
        }

        return await best.Planning.WorkAsync(measured, best.Schedule);
    }

    private async ValueTask<Tried> AloneAsync(MeasuredJob measured)
    {
        Tried? best = null;
        foreach (var hands in Hands.Alone(job.Crew))
            if (await TryAsync(hands, measured, long.MaxValue) is { } tried && (best is null || tried.IsBetterThan(best))) best = tried;
        return best!;
    }

    private async ValueTask<Tried?> TryAsync(Hands hands, MeasuredJob measured, long youngerThanMs)
    {
        var planning = new CoatPlanning(job, conditions, hands, ways, effort);
        return await planning.ScheduleAsync(measured, youngerThanMs) is { } schedule ? new Tried(planning, schedule) : null;
    }

    private sealed record Tried(CoatPlanning Planning, CoatSchedule Schedule)
    {
        public bool Works { get; } = Planning.Works(Schedule);

        /// <summary>Of what works the one with the fewest sections, then the fewest batches, then the soonest done.</summary>
        public bool IsBetterThan(Tried other) => (Works, other.Works) switch
        {
            (true, true) => Effort.CompareTo(other.Effort) < 0,
            (false, false) => Schedule.IsBetterThan(other.Schedule),
            _ => Works,
        };

        private (int Sections, int Batches, long EndMs) Effort => (Schedule.Found.Sections.Count, Schedule.Mixes.Count, Schedule.Found.Sections.Max(s => s.EndMs));
    }
}
