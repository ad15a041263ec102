using Lapwise.Client.Jobs;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Client.Phases.Money;

/// <summary>Prices the job on show: at once without the chance of a line, then, in slices, with it and with the options.</summary>
internal sealed class PriceWorking(Action changed) : IDisposable
{
    private CancellationTokenSource working = new();
    private (WholeJob Whole, JobDocument Document, RatesDocument Rates)? asked;
    private (WholeJob Whole, IReadOnlyList<Chance?> Chances)? counted;

    public WholePrice? Priced { get; private set; }
    public IReadOnlyList<Fault> Faults { get; private set; } = [];
    /// <summary>The chance of a line and the options are still being worked out.</summary>
    public bool IsWorking { get; private set; }

    /// <summary>Prices anew where anything it rests on has changed.</summary>
    public void Look(WholeJob? whole, JobDocument document, IReadOnlyList<ProductDocument> library, RatesDocument rates)
    {
        if (whole is null)
        {
            (Priced, asked) = (null, null);
            return;
        }

        if (asked is { } was && ReferenceEquals(was.Whole, whole) && ReferenceEquals(was.Document, document) && was.Rates == rates) return;
        asked = (whole, document, rates);
        working.Cancel();
        working.Dispose();
        working = new CancellationTokenSource();
        _ = Work(whole, document, library, rates, new Breathing(working.Token));
    }

    private async Task Work(WholeJob whole, JobDocument document, IReadOnlyList<ProductDocument> library, RatesDocument rates, Breathing breathing)
    {
        try
        {
            IsWorking = true;
            var known = counted is { } c && ReferenceEquals(c.Whole, whole) ? c.Chances : null;
            var plain = document with { Agreement = document.Agreement is { } agreed ? agreed with { Options = null } : null };
            var before = Priced;
            (Priced, Faults) = WholePrice.Of(plain, whole, library, rates, known ?? [.. whole.Work.Coats.Select(_ => (Chance?)null)]);
            // Options on show stay until they are worked out anew.
            if (Priced is not null && before is not null) Priced = Priced with { Options = [.. before.Options.Where(o => o.Price.Rates.Currency == Priced.Rates.Currency)] };
            if (Faults.Count == 0)
            {
                await breathing.Rest();
                known ??= await WholePrice.ChancesOf(whole, breathing.Pause);
                counted = (whole, known);
                await breathing.Rest();
                (Priced, Faults) = await WholePrice.OfAsync(document, whole, library, rates, known, new Effort(1, breathing.Pause));
            }

            IsWorking = false;
            changed();
        }
        catch (OperationCanceledException)
        {
            // Something changed; its own price is on the way.
        }
    }

    public void Dispose()
    {
        working.Cancel();
        working.Dispose();
    }
}
