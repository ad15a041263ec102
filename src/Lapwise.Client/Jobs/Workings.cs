using Lapwise.Core;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Supply;
using Lapwise.Core.Work;

namespace Lapwise.Client.Jobs;

/// <summary>
/// What the core makes of the document as it stands. Reading and measuring follow each keystroke, so the drawing
/// grows as one types; the order of work follows when the typing pauses.
/// </summary>
internal sealed class Workings(Func<JobDocument> document, Func<IReadOnlyList<ProductDocument>> library) : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan Slice = TimeSpan.FromMilliseconds(30);
    private CancellationTokenSource planning = new();
    private long breathedAt;

    public Job? Job { get; private set; }
    public IReadOnlyList<Fault> Faults { get; private set; } = [];
    public MeasuredJob? Measured { get; private set; }
    public JobMaterials? Materials { get; private set; }
    public JobConditions? Conditions { get; private set; }
    /// <summary>The job through every phase, order of work and supply included.</summary>
    public WholeJob? Whole { get; private set; }
    /// <summary>The order of work on show belongs to an earlier state of the document; the new one is being worked out.</summary>
    public bool IsPlanning { get; private set; }
    /// <summary>How long the last plan took, from the end of the pause.</summary>
    public TimeSpan PlanTook { get; private set; }

    public event Action? Changed;

    public void Refresh()
    {
        var read = JobReading.Read(document(), library());
        Job = read.Job;
        Measured = Job is null ? null : Measuring.Measure(Job);
        Faults = [.. read.Faults, .. Measured?.Faults ?? []];
        Materials = Job is null || Measured is null ? null : Estimating.Estimate(Job, Measured);
        Conditions = Job is null ? null : Judging.Judge(Job);
        if (Job is null) Whole = null;
        IsPlanning = Job is not null;
        _ = PlanAfterPause();
    }

    public void Dispose()
    {
        planning.Cancel();
        planning.Dispose();
    }

    private async Task PlanAfterPause()
    {
        await planning.CancelAsync();
        planning.Dispose();
        planning = new CancellationTokenSource();
        var stop = planning.Token;
        try
        {
            await Task.Delay(Pause, stop);
        }
        catch (OperationCanceledException)
        {
            return;
        }
        if (Job is not { } job || Measured is null || Materials is null || Conditions is null) return;

        var started = breathedAt = System.Diagnostics.Stopwatch.GetTimestamp();
        var (measured, materials, conditions, faults) = (Measured, Materials, Conditions, Faults);
        try
        {
            var work = await Planning.PlanAsync(job, measured, conditions, Effort.AtOnce with { Pause = () => Breathe(stop) });
            Whole = new WholeJob(job, measured, materials, conditions, work, Supplying.Supply(job, materials, work), faults);
        }
        catch (OperationCanceledException)
        {
            // Typed on in the meantime: the next plan is on its way.
            return;
        }
        PlanTook = System.Diagnostics.Stopwatch.GetElapsedTime(started);
        IsPlanning = false;
        Changed?.Invoke();
    }

    /// <summary>Lets the page draw and take keystrokes between slices, but not after each of the shortest ones.</summary>
    private async ValueTask Breathe(CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        if (System.Diagnostics.Stopwatch.GetElapsedTime(breathedAt) < Slice) return;
        await Task.Delay(1, stop);
        breathedAt = System.Diagnostics.Stopwatch.GetTimestamp();
    }
}
