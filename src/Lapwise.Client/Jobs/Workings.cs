using System.Diagnostics;
using System.Text.Json;
using Lapwise.Core;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Supply;
using Lapwise.Core.Timeline;
using Lapwise.Core.Work;

namespace Lapwise.Client.Jobs;

/// <summary>
/// What the core makes of the document as it stands. Reading and measuring follow each keystroke, so the drawing
/// grows as one types; the order of work follows once the page is drawn and when the typing pauses, in slices that never hold
/// the page up.
/// </summary>
internal sealed class Workings(Func<JobDocument> document, Func<IReadOnlyList<ProductDocument>> library, Func<IReadOnlyList<VisitDocument>> settled) : IDisposable
{
    private static readonly TimeSpan AfterTyping = TimeSpan.FromMilliseconds(250);
    private CancellationTokenSource working = new();
    private bool isDrawn;
    // The tops last planned, as entered, and how they can be cut: kept while only pace, room or products change.
    private (string Entered, IReadOnlyList<MeasuredTop> Tops, TopWays Ways) cut = ("", [], new TopWays());

    public Job? Job { get; private set; }
    public IReadOnlyList<Fault> Faults { get; private set; } = [];
    public MeasuredJob? Measured { get; private set; }
    public JobMaterials? Materials { get; private set; }
    public JobConditions? Conditions { get; private set; }
    /// <summary>The job through every phase, order of work and supply included.</summary>
    public WholeJob? Whole { get; private set; }
    /// <summary>The order of work on show belongs to an earlier state of the document; the new one is being worked out.</summary>
    public bool IsPlanning { get; private set; }
    /// <summary>What is on show here, to hold against a later moment: another as soon as anything is worked out anew.</summary>
    public object Stand => (Faults, Whole, IsPlanning, Further);
    /// <summary>How long the last plan took, from the end of the pause.</summary>
    public TimeSpan PlanTook { get; private set; }
    /// <summary>A longer search for a better order of the plan on show; null: none was asked for.</summary>
    public FurtherSearch? Further { get; private set; }

    /// <summary>What the way to a first plan goes by.</summary>
    public JobSoFar SoFar => new(document(), Faults, document().Products is { Count: > 0 } || library().Count > 0, Conditions, IsPlanning ? null : Whole);

    public event Action? Changed;

    public void Refresh()
    {
        var read = JobReading.Read(document(), library());
        Job = read.Job;
        Measured = Job is null ? null : Measuring.Measure(Job);
        Faults = [.. read.Faults, .. Measured?.Faults ?? []];
        Materials = Job is null || Measured is null ? null : Estimating.Estimate(Job, Measured);
        Conditions = Job is null ? null : Judging.Judge(Job, Materials);
        if (Job is null) Whole = null;
        Further = null;
        IsPlanning = Job is not null;
        if (isDrawn) _ = Plan(AfterTyping, StartAnew());
    }

    /// <summary>What was entered is on the page: from now on its order of work is worked out, too.</summary>
    public void BeginPlanning()
    {
        isDrawn = true;
        _ = Plan(TimeSpan.Zero, StartAnew());
    }

    /// <summary>Searches on for one coat, each time with more steps, until its order is proven, the steps are used up or it is stopped.</summary>
    public async Task SearchOn(int coat)
    {
        if (Whole is not { } whole || IsPlanning) return;
        var stop = StartAnew();
        var before = whole.Work.Coats[coat];
        Further = new FurtherSearch(coat, before, FurtherSearch.Efforts[0], IsRunning: true);
        try
        {
            foreach (var times in FurtherSearch.Efforts)
            {
                Further = Further with { Times = times };
                Changed?.Invoke();
                var breathing = new Breathing(stop);
                await breathing.Rest();
                var one = whole.Conditions with { Coats = [whole.Conditions.Coats[coat]] };
                var found = (await Planning.PlanAsync(whole.Job, whole.Measured, one, new Effort(times, breathing.Pause), cut.Ways)).Coats[0];
                if (FurtherSearch.IsBetter(found, Whole.Work.Coats[coat])) Whole = Replaced(Whole, coat, found);
                if (found.Proof.State == ProofState.Proven && found.LapMarginMs >= found.TargetMarginMs) break;
            }

            Further = Further with { IsRunning = false };
            Changed?.Invoke();
        }
        catch (OperationCanceledException)
        {
            // Stopped by hand or by a change of the document; the plan on show stays.
        }
    }

    public void StopSearching()
    {
        working.Cancel();
        if (Further is not null) Further = Further with { IsRunning = false, IsStopped = true };
        Changed?.Invoke();
    }

    public void Dispose()
    {
        working.Cancel();
        working.Dispose();
    }

    private async Task Plan(TimeSpan pause, CancellationToken stop)
    {
        try
        {
            await Task.Delay(pause, stop);
            if (Job is not { } job || Measured is null || Materials is not { } materials || Conditions is not { } conditions) return;

            var started = Stopwatch.GetTimestamp();
            var measured = Measured = AsCut(Measured);
            var breathing = new Breathing(stop);
            var work = await Planning.PlanAsync(job, measured, conditions, new Effort(1, breathing.Pause), cut.Ways);
            PlanTook = Stopwatch.GetElapsedTime(started);
            // Each of what follows, the drawing too, takes a slice of its own.
            await breathing.Rest();
            materials = Materials = Estimating.Estimate(job, measured, work.Rollers);
            var supply = Supplying.Supply(job, materials, work);
            var timeline = Timing.Time(job, measured, conditions, work, settled());
            await breathing.Rest();
            Whole = new WholeJob(job, measured, materials, conditions, work, supply, timeline, Faults);
            IsPlanning = false;
            Changed?.Invoke();
        }
        catch (OperationCanceledException)
        {
            // The document changed; its own plan is on the way.
        }
    }

    /// <summary>What was measured, with the tops that are cut already where they are entered as they were.</summary>
    private MeasuredJob AsCut(MeasuredJob measured)
    {
        // Nothing else of a document goes into what is measured of its tops.
        var entered = JsonSerializer.Serialize(new JobDocument { Units = document().Units, Tops = document().Tops }, JobJson.Default.JobDocument);
        if (entered != cut.Entered) cut = (entered, measured.Tops, new TopWays());
        return measured with { Tops = cut.Tops };
    }

    private CancellationToken StartAnew()
    {
        working.Cancel();
        working.Dispose();
        working = new CancellationTokenSource();
        return working.Token;
    }

    private WholeJob Replaced(WholeJob whole, int coat, CoatWork found)
    {
        var work = new JobWork([.. whole.Work.Coats.Select((c, i) => i == coat ? found : c)]);
        var materials = Materials = Estimating.Estimate(whole.Job, whole.Measured, work.Rollers);
        return whole with
        {
            Materials = materials,
            Work = work,
            Supply = Supplying.Supply(whole.Job, materials, work),
            Timeline = Timing.Time(whole.Job, whole.Measured, whole.Conditions, work, settled()),
        };
    }
}
