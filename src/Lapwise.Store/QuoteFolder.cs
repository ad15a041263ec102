using System.Globalization;
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

    /// <summary>Every quote, in the order in which they were given out.</summary>
    public async IAsyncEnumerable<IssuedQuote> Each([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        await foreach (var row in database.Quotes.AsNoTracking().OrderBy(r => r.IssuedAtTicks).ThenBy(r => r.Id).AsAsyncEnumerable().WithCancellation(cancel)) yield return Read(row.Json);
    }

    /// <summary>The number after the highest that was ever given out, here or in a shop whose quotes were taken in.</summary>
    public async Task<int> NextNumber(CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var highest = await database.Quotes.OrderByDescending(r => r.Number.Length).ThenByDescending(r => r.Number).Select(r => r.Number).FirstOrDefaultAsync(cancel);
        return highest is null ? 1 : int.Parse(highest, CultureInfo.InvariantCulture) + 1;
    }

    /// <summary>Puts in quotes of another shop, in their order. Each stands among the others by the day it was given out.</summary>
    /// <exception cref="DbUpdateException">An id or a number is taken: nothing was changed.</exception>
    public async Task AddAll(IReadOnlyList<IssuedQuote> quotes, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        foreach (var (quote, place) in quotes.Select((q, i) => (q, i)))
            database.Add(Row(quote, DateOnly.ParseExact(quote.On, "yyyy-MM-dd", CultureInfo.InvariantCulture).ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc).Ticks + place));
        await database.SaveChangesAsync(cancel);
    }

    /// <exception cref="DbUpdateException">The id or the number is taken: nothing was changed.</exception>
    public async Task Add(IssuedQuote quote, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        database.Add(Row(quote, time.GetUtcNow().UtcTicks));
        await database.SaveChangesAsync(cancel);
    }

    private static QuoteRow Row(IssuedQuote quote, long issuedAtTicks) =>
        new() { Id = quote.Id, Number = quote.Number, JobId = quote.JobId, IssuedAtTicks = issuedAtTicks, Json = JsonSerializer.Serialize(quote, QuoteJson.Default.IssuedQuote) };

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
