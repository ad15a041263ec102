using Lapwise.Core.Jobs;
using Microsoft.EntityFrameworkCore;

namespace Lapwise.Store;

/// <summary>Crews, gear and days lost: one document, under <see cref="RatesShelf.Own"/>.</summary>
public sealed class DaysShelf(IDbContextFactory<ShopDatabase> databases, TimeProvider time)
    : DocumentShelf<DaysDocument>(databases, time, JobJson.Default.DaysDocument)
{
    protected override string NameOf(DaysDocument document) => RatesShelf.Own;
    private protected override IQueryable<DocumentRow> Rows(ShopDatabase database) => database.Days;
    private protected override DocumentRow NewRow() => new DaysRow();
}

/// <summary>The days the shop has settled on: one document, under <see cref="RatesShelf.Own"/>.</summary>
public sealed class SettledShelf(IDbContextFactory<ShopDatabase> databases, TimeProvider time)
    : DocumentShelf<SettledDaysDocument>(databases, time, JobJson.Default.SettledDaysDocument)
{
    /// <summary>The visits settled for one job, in order of time; empty: none.</summary>
    public async Task<IReadOnlyList<VisitDocument>> OfJob(string id, CancellationToken cancel) =>
        [.. ((await Find(RatesShelf.Own, cancel))?.Document.Visits ?? []).Where(v => v.Job == id)];

    protected override string NameOf(SettledDaysDocument document) => RatesShelf.Own;
    private protected override IQueryable<DocumentRow> Rows(ShopDatabase database) => database.Settled;
    private protected override DocumentRow NewRow() => new SettledRow();
}

internal sealed class DaysRow : DocumentRow;

internal sealed class SettledRow : DocumentRow;
