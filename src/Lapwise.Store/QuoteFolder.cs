using System.Text.Json;
using Lapwise.Core.Money;
using Microsoft.EntityFrameworkCore;

namespace Lapwise.Store;

/// <summary>Quotes as they were given out. One is put in once and never changed or taken out.</summary>
public sealed class QuoteFolder(IDbContextFactory<ShopDatabase> databases, TimeProvider time)
{
    /// <summary>The quotes of one job, newest first.</summary>
    public async Task<IReadOnlyList<IssuedQuote>> OfJob(string jobId, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var rows = await database.Quotes.AsNoTracking().Where(r => r.JobId == jobId).OrderByDescending(r => r.IssuedAtTicks).ThenByDescending(r => r.Id).Select(r => r.Json).ToListAsync(cancel);
        return [.. rows.Select(Read)];
    }

    public async Task<IssuedQuote?> Find(string id, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        return await database.Quotes.AsNoTracking().FirstOrDefaultAsync(r => r.Id == id, cancel) is { } row ? Read(row.Json) : null;
    }

    /// <summary>How many were ever given out: the next has the number after.</summary>
    public async Task<int> Count(CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        return await database.Quotes.CountAsync(cancel);
    }

    /// <exception cref="DbUpdateException">The id or the number is taken: nothing was changed.</exception>
    public async Task Add(IssuedQuote quote, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        database.Add(new QuoteRow { Id = quote.Id, Number = quote.Number, JobId = quote.JobId, IssuedAtTicks = time.GetUtcNow().UtcTicks, Json = JsonSerializer.Serialize(quote, QuoteJson.Default.IssuedQuote) });
        await database.SaveChangesAsync(cancel);
    }

    private static IssuedQuote Read(string json) => JsonSerializer.Deserialize(json, QuoteJson.Default.IssuedQuote)!;
}

internal sealed class QuoteRow
{
    public string Id { get; set; } = "";
    public string Number { get; set; } = "";
    public string JobId { get; set; } = "";
    public long IssuedAtTicks { get; set; }
    public string Json { get; set; } = "";
}
