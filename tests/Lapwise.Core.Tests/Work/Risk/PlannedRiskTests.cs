using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Tests.Work.Sections;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Tests.Work.Risk;

/// <summary>Without any spread a plan put on the clock again is the plan: for one, for one with a helper, for two, and poured.</summary>
public sealed class PlannedRiskTests
{
    private static readonly Pace Steady = new(0.005, 0.01, 0.05, 20, 10, 150) { DaySpread = 0 };

    public static TheoryData<int, double, ApplicationMethod> Jobs() => new()
    {
        { 1, 1400, ApplicationMethod.Rolled },
        { 1, 300, ApplicationMethod.Rolled },
        { 2, 300, ApplicationMethod.Rolled },
        { 3, 420, ApplicationMethod.Rolled },
        { 1, 1400, ApplicationMethod.Poured },
        { 2, 700, ApplicationMethod.Poured },
        { 3, 420, ApplicationMethod.Poured },
        { 2, 420, ApplicationMethod.Wiped },
    };

    [Theory]
    [InlineData(0)]
    [InlineData(180)]
    public void Of_batches_mixed_ahead_without_spread_is_the_plan(double inductionS)
    {
        var job = Invented.Job with
        {
            Crew = [new Person("Alba", Steady)],
            Aims = CutTops.OneAim,
            Tools = Invented.Tools with { LargestBatchMl = 420 },
            System = [Invented.Coat with { Product = Invented.Clear with { InductionS = inductionS, Hazards = [] } }],
        };
        var top = CutTops.Island(3, 0.9);
        var work = Planning.Plan(job, new MeasuredJob([top], top.TakeOff, []), Judging.Judge(job)).Coats[0];
        Assert.True(work.Batches.Count > 1 && work.Batches.Skip(1).All(work.StandsMixed));
        var risk = Risking.Of(work, job, 1, 1, Spreads.None);
        Assert.Equal(work.LapMarginMs, risk.WorstMargins.MedianMs);
        Assert.Equal(0, risk.BatchOutlivesPot.Times);
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Of_a_planned_coat_without_spread_is_the_plan(int people, double largestBatchMl, ApplicationMethod method)
    {
        var coat = Invented.Coat with { Product = Invented.Clear with { Method = method, Pour = method is ApplicationMethod.Poured ? new PourTimes(600, [600, 1500], (3 * 3600, 6 * 3600)) : Invented.Clear.Pour } };
        var job = Invented.Job with
        {
            Crew = [.. Enumerable.Range(1, people).Select(n => new Person($"P{n}", Steady))],
            Aims = CutTops.OneAim,
            Tools = Invented.Tools with { LargestBatchMl = largestBatchMl },
            System = [coat],
        };
        var top = CutTops.Island(3, 0.9);
        var work = Planning.Plan(job, new MeasuredJob([top, CutTops.LKitchen], top.TakeOff, []), Judging.Judge(job)).Coats[0];

        var risk = Risking.Of(work, job, 1, 1, Spreads.None);
        Assert.Equal(work.LapMarginMs, risk.WorstMargins.MedianMs);
        Assert.Equal(work.Laps.Count(l => l.Kind != LapKind.Break && l.AgeMs > work.OpenTimeMs), risk.Laps.Count(l => l.Line.Times > 0));
        var outlived = work.Batches.Any(b => work.Sections.Where(s => s.Batch == b.Id).Any(s => (method is ApplicationMethod.Poured ? s.WetEndMs : s.EndMs) > b.MixStartMs + work.PotLifeMs));
        Assert.Equal(outlived ? 1 : 0, risk.BatchOutlivesPot.Times);
        Assert.Equal(method is ApplicationMethod.Poured ? (work.Steps.Any(s => s.Kind is not StepKind.Pour && !s.IsInTime) ? 1 : 0) : null, risk.StepLate?.Times);
    }
}
