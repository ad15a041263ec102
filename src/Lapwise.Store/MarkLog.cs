using System.Text.Json;
using Lapwise.Core.OnSite;
using Microsoft.EntityFrameworkCore;

namespace Lapwise.Store;

/// <summary>
/// The marks of every run, in the order in which they came in. Marks are only ever added: one that is sent twice is there once,
/// and the first to come under an id stays.
/// </summary>
public sealed class MarkLog(IDbContextFactory<ShopDatabase> databases)
{
    /// <summary>So many marks are answered at once; the rest is asked for from there.</summary>
    public const int MostAtOnce = 1000;

    public async Task Append(string job, string run, IReadOnlyList<MarkDocument> marks, CancellationToken cancel)
    {
        if (marks.Count == 0) return;
        await using var database = await databases.CreateDbContextAsync(cancel);
        await using var all = await database.Database.BeginTransactionAsync(cancel);
        foreach (var mark in marks)
        {
            var json = JsonSerializer.Serialize(mark, RunJson.Default.MarkDocument);
            await database.Database.ExecuteSqlAsync($"INSERT INTO marks (job, run, id, json) VALUES ({job}, {run}, {mark.Id}, {json}) ON CONFLICT (run, id) DO NOTHING", cancel);
        }

        await all.CommitAsync(cancel);
    }

    /// <summary>Marks that came in after a place, at most <see cref="MostAtOnce"/>, and the place of the last of them.</summary>
    public async Task<(IReadOnlyList<MarkDocument> Marks, long Upto)> After(string job, string run, long after, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var rows = await database.Marks.AsNoTracking().Where(m => m.Job == job && m.Run == run && m.Arrival > after).OrderBy(m => m.Arrival).Take(MostAtOnce).ToListAsync(cancel);
        return ([.. rows.Select(r => JsonSerializer.Deserialize(r.Json, RunJson.Default.MarkDocument)!)], rows.Count > 0 ? rows[^1].Arrival : after);
    }

    /// <summary>Every mark of a run, in the order in which they came in.</summary>
    public async Task<IReadOnlyList<MarkDocument>> All(string job, string run, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var rows = await database.Marks.AsNoTracking().Where(m => m.Job == job && m.Run == run).OrderBy(m => m.Arrival).Select(m => m.Json).ToListAsync(cancel);
        return [.. rows.Select(r => JsonSerializer.Deserialize(r, RunJson.Default.MarkDocument)!)];
    }

    /// <summary>The runs of a job, the one last marked first.</summary>
    public async Task<IReadOnlyList<RunLine>> Runs(string job, CancellationToken cancel)
    {
        await using var database = await databases.CreateDbContextAsync(cancel);
        var rows = await database.Marks.Where(m => m.Job == job).GroupBy(m => m.Run).Select(g => new { Run = g.Key, Upto = g.Max(m => m.Arrival) }).OrderByDescending(r => r.Upto).ToListAsync(cancel);
        return [.. rows.Select(r => new RunLine(r.Run, r.Upto))];
    }
}
