using Lapwise.Client.Fields;
using Lapwise.Client.Jobs;
using Lapwise.Core;
using Lapwise.Core.Work;
using Microsoft.AspNetCore.Components;

namespace Lapwise.Client.Phases.Work;

/// <summary>A part of the page that works something out about the plan on show, in slices, and anew when that plan changes.</summary>
public abstract class Considering : JobPart, IDisposable
{
    private CancellationTokenSource? going;
    private CoatWork? considered;

    [Parameter, EditorRequired] public WholeJob Whole { get; set; } = null!;
    [Parameter] public int Coat { get; set; }
    /// <summary>The plan on show is old; a new one is on the way.</summary>
    [Parameter] public bool IsOld { get; set; }

    private protected CoatWork Work => Whole.Work.Coats[Coat];
    private protected bool IsBusy { get; private set; }

    /// <summary>Somebody looks at it.</summary>
    private protected abstract bool IsWanted { get; }

    private protected abstract void Clear();

    private protected abstract Task Consider(Breathing breathing);

    protected override void OnParametersSet() => Begin();

    /// <summary>Begins where it is wanted and the plan is another one than was considered last.</summary>
    private protected void Begin()
    {
        if (!ReferenceEquals(considered, Work))
        {
            Stop();
            Clear();
        }
        if (IsOld) Stop();
        else if (IsWanted && considered is null) _ = Run();
    }

    public void Dispose()
    {
        Stop();
        GC.SuppressFinalize(this);
    }

    private void Stop()
    {
        if (IsBusy || !ReferenceEquals(considered, Work)) considered = null;
        going?.Cancel();
        going?.Dispose();
        (going, IsBusy) = (null, false);
    }

    private async Task Run()
    {
        going = new CancellationTokenSource();
        var breathing = new Breathing(going.Token);
        (considered, IsBusy) = (Work, true);
        try
        {
            await breathing.Rest();
            await Consider(breathing);
            IsBusy = false;
            StateHasChanged();
        }
        catch (OperationCanceledException)
        {
            // Another plan came, or nobody looks any more.
        }
    }
}
