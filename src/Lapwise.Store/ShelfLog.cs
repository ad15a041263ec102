using System.Text.Json;
using Lapwise.Core.Jobs;
using Microsoft.EntityFrameworkCore;

namespace Lapwise.Store;

/// <summary>The log of the shop's shelf. It only grows; an entry that is there already is not put in again.</summary>
public sealed class ShelfLog(IDbContextFactory<ShopDatabase> databases, TimeProvider time)
{
    /// <summary>Every entry in the order it came.</summary>
    public async Task<IReadOnlyList<ShelfEntryDocument>> All(CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var rows = await database.ShelfEntries.AsNoTracking().OrderBy(r => r.Place).Select(r => r.Json).ToListAsync(cancel);
        return [.. rows.Select(json => JsonSerializer.Deserialize(json, JobJson.Default.ShelfEntryDocument)!)];
    }

    /// <summary>Puts entries in together; those whose id is known already are passed over. How many were new.</summary>
    public async Task<int> Add(IReadOnlyList<ShelfEntryDocument> entries, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var ids = entries.Select(e => e.Id).ToList();
        var known = (await database.ShelfEntries.Where(r => ids.Contains(r.Id)).Select(r => r.Id).ToListAsync(cancel)).ToHashSet(StringComparer.Ordinal);
        var now = time.GetUtcNow().UtcTicks;
        foreach (var entry in entries.Where(e => known.Add(e.Id)))
            database.Add(new ShelfEntryRow { Id = entry.Id, WrittenAtTicks = now, Json = JsonSerializer.Serialize(entry, JobJson.Default.ShelfEntryDocument) });
        return await database.SaveChangesAsync(cancel);
    }
}

internal sealed class ShelfEntryRow
{
    /// <summary>Place in the log, counted by the database.</summary>
    public long Place { get; set; }
    public string Id { get; set; } = "";
    public long WrittenAtTicks { get; set; }
    public string Json { get; set; } = "";
}
