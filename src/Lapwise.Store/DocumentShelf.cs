using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Lapwise.Core.Jobs;
using Microsoft.EntityFrameworkCore;

namespace Lapwise.Store;

/// <summary>The jobs of the shop.</summary>
public sealed class JobShelf(IDbContextFactory<ShopDatabase> databases, TimeProvider time)
    : DocumentShelf<JobDocument>(databases, time, JobJson.Default.JobDocument)
{
    protected override string NameOf(JobDocument document) => document.Name;
    private protected override IQueryable<DocumentRow> Rows(ShopDatabase database) => database.Jobs;
    private protected override DocumentRow NewRow() => new JobRow();
}

/// <summary>The coatings the shop works with, each under its product id.</summary>
public sealed class ProductShelf(IDbContextFactory<ShopDatabase> databases, TimeProvider time)
    : DocumentShelf<ProductDocument>(databases, time, JobJson.Default.ProductDocument)
{
    protected override string NameOf(ProductDocument document) => document.Name;
    private protected override IQueryable<DocumentRow> Rows(ShopDatabase database) => database.Products;
    private protected override DocumentRow NewRow() => new ProductRow();
}

/// <summary>What the shop charges by: one document, under <see cref="Own"/>.</summary>
public sealed class RatesShelf(IDbContextFactory<ShopDatabase> databases, TimeProvider time)
    : DocumentShelf<RatesDocument>(databases, time, JobJson.Default.RatesDocument)
{
    public const string Own = "own";
    protected override string NameOf(RatesDocument document) => Own;
    private protected override IQueryable<DocumentRow> Rows(ShopDatabase database) => database.Rates;
    private protected override DocumentRow NewRow() => new RatesRow();
}

/// <summary>What the shop never wants to run out of: one document, under <see cref="RatesShelf.Own"/>; its entries are in <see cref="ShelfLog"/>.</summary>
public sealed class KeepShelf(IDbContextFactory<ShopDatabase> databases, TimeProvider time)
    : DocumentShelf<ShelfDocument>(databases, time, JobJson.Default.ShelfDocument)
{
    protected override string NameOf(ShelfDocument document) => RatesShelf.Own;
    private protected override IQueryable<DocumentRow> Rows(ShopDatabase database) => database.Keeps;
    private protected override DocumentRow NewRow() => new KeepRow();
}

/// <summary>
/// Documents of one kind, whole, each with a version that counts its changes.
/// Safe to use from many requests at once: every call has a database session of its own.
/// </summary>
public abstract class DocumentShelf<T>(IDbContextFactory<ShopDatabase> databases, TimeProvider time, JsonTypeInfo<T> json)
{
    protected abstract string NameOf(T document);
    private protected abstract IQueryable<DocumentRow> Rows(ShopDatabase database);
    private protected abstract DocumentRow NewRow();

    /// <summary>Every document without its content, last changed first.</summary>
    public async Task<IReadOnlyList<Listed>> List(CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var rows = await Rows(database)
            .OrderByDescending(r => r.ChangedAtTicks).ThenBy(r => r.Id)
            .Select(r => new { r.Id, r.Name, r.Version, r.ChangedAtTicks })
            .ToListAsync(cancel);
        return [.. rows.Select(r => new Listed(r.Id, r.Name, r.Version, Instant(r.ChangedAtTicks)))];
    }

    /// <summary>Every document with its content, by id.</summary>
    public async Task<IReadOnlyList<T>> All(CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var rows = await Rows(database).AsNoTracking().OrderBy(r => r.Id).ToListAsync(cancel);
        return [.. rows.Select(r => Read(r).Document)];
    }

    /// <summary>Every document with its content, one at a time, by id.</summary>
    public async IAsyncEnumerable<Stored<T>> EachStored([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        await foreach (var row in Rows(database).AsNoTracking().OrderBy(r => r.Id).AsAsyncEnumerable().WithCancellation(cancel)) yield return Read(row);
    }

    /// <summary>One document, or null.</summary>
    public async Task<Stored<T>?> Find(string id, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        return await Rows(database).AsNoTracking().FirstOrDefaultAsync(r => r.Id == id, cancel) is { } row ? Read(row) : null;
    }

    /// <summary>Puts a new document in; clashes where the id is taken.</summary>
    public async Task<SaveOutcome<T>> Add(string id, T document, CancellationToken cancel)
    {
        if (await Find(id, cancel) is { } taken) return new SaveOutcome<T>.Clash(taken);
        await using var database = await databases.CreateDbContextAsync(cancel);
        var row = NewRow();
        row.Id = id;
        Write(row, document, version: 1);
        database.Add(row);
        try
        {
            await database.SaveChangesAsync(cancel);
            return new SaveOutcome<T>.Done(Read(row));
        }
        catch (DbUpdateException)
        {
            // Taken in the meantime is an answer; anything else (a full disk, a locked file) stays an accident.
            if (await Find(id, cancel) is { } inStore) return new SaveOutcome<T>.Clash(inStore);
            throw;
        }
    }

    /// <summary>Puts many documents in or over those under the same id, all or none.</summary>
    public async Task PutAll(IReadOnlyList<(string Id, T Document)> documents, CancellationToken cancel)
    {
        const int slice = 500;
        await using var database = await databases.CreateDbContextAsync(cancel);
        await using var all = await database.Database.BeginTransactionAsync(cancel);
        foreach (var some in documents.Chunk(slice))
        {
            var ids = some.Select(d => d.Id).ToList();
            var rows = await Rows(database).Where(r => ids.Contains(r.Id)).ToDictionaryAsync(r => r.Id, StringComparer.Ordinal, cancel);
            foreach (var (id, document) in some)
            {
                if (rows.TryGetValue(id, out var row))
                {
                    Write(row, document, row.Version + 1);
                    continue;
                }

                row = NewRow();
                row.Id = id;
                Write(row, document, version: 1);
                database.Add(row);
            }

            await database.SaveChangesAsync(cancel);
            database.ChangeTracker.Clear();
        }

        await all.CommitAsync(cancel);
    }

    /// <summary>Replaces a document, if it still stands at the version the change was made from.</summary>
    public Task<SaveOutcome<T>> Replace(string id, T document, long fromVersion, CancellationToken cancel) =>
        Change(id, fromVersion, (_, row) => Write(row, document, fromVersion + 1), cancel);

    /// <summary>Takes a document out, if it still stands at that version; the answer holds what was taken out.</summary>
    public Task<SaveOutcome<T>> Remove(string id, long fromVersion, CancellationToken cancel) =>
        Change(id, fromVersion, (database, row) => database.Remove(row), cancel);

    private async Task<SaveOutcome<T>> Change(string id, long fromVersion, Action<ShopDatabase, DocumentRow> change, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        if (await Rows(database).FirstOrDefaultAsync(r => r.Id == id, cancel) is not { } row) return new SaveOutcome<T>.Missing();
        if (row.Version != fromVersion) return new SaveOutcome<T>.Clash(Read(row));
        change(database, row);
        try
        {
            await database.SaveChangesAsync(cancel);
            return new SaveOutcome<T>.Done(Read(row));
        }
        catch (DbUpdateConcurrencyException)
        {
            return await Find(id, cancel) is { } inStore ? new SaveOutcome<T>.Clash(inStore) : new SaveOutcome<T>.Missing();
        }
    }

    private void Write(DocumentRow row, T document, long version)
    {
        row.Name = NameOf(document);
        row.Version = version;
        row.ChangedAtTicks = time.GetUtcNow().UtcTicks;
        row.Json = JsonSerializer.Serialize(document, json);
    }

    private Stored<T> Read(DocumentRow row) =>
        new(row.Id, JsonSerializer.Deserialize(row.Json, json)!, row.Version, Instant(row.ChangedAtTicks));

    private static DateTimeOffset Instant(long utcTicks) => new(utcTicks, TimeSpan.Zero);
}
