using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Store;

namespace Lapwise.Server.Features.Jobs;

/// <summary>Stored jobs taken through their own phases, each once for as long as neither it nor a coating changes.</summary>
internal sealed class WorkedJobs(JobShelf jobs, ProductShelf products)
{
    private readonly Dictionary<string, WholeJob> worked = new(StringComparer.Ordinal);

    /// <summary>Null, without a fault: it is no longer there.</summary>
    public async Task<(WholeJob? Whole, IReadOnlyList<Fault> Faults)> Of(Listed job, IReadOnlyList<ProductDocument> library, string libraryMark, CancellationToken cancel)
    {
        var key = $"{job.Id} {job.Version} {libraryMark}";
        lock (worked) if (worked.TryGetValue(key, out var known)) return (known, known.Faults);
        if (await jobs.Find(job.Id, cancel) is not { } stored) return (null, []);
        var (whole, faults) = WholeJob.From(stored.Document, library);
        if (whole is not null) lock (worked) worked[key] = whole;
        return (whole, faults);
    }

    /// <summary>Forgets what none of these jobs was worked to.</summary>
    public void KeepOnly(IReadOnlyList<Listed> listed, string libraryMark)
    {
        var keys = listed.Select(j => $"{j.Id} {j.Version} {libraryMark}").ToHashSet(StringComparer.Ordinal);
        lock (worked) foreach (var key in worked.Keys.Where(k => !keys.Contains(k)).ToList()) worked.Remove(key);
    }

    public async Task<(IReadOnlyList<ProductDocument> Library, string Mark)> Library(CancellationToken cancel)
    {
        var listed = await products.List(cancel);
        return (await products.All(cancel), string.Join(' ', listed.OrderBy(p => p.Id, StringComparer.Ordinal).Select(p => $"{p.Id}:{p.Version}")));
    }
}
