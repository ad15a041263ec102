namespace Lapwise.Core.Jobs;

/// <summary>Which tops a coat goes on, as it stands in the document: by their names, or all where none is named.</summary>
public static class CoatTops
{
    public static bool GoesOn(this CoatDocument coat, TopDocument top) => coat.OnTops is not { Count: > 0 } named || named.Any(n => Same(n, top.Name));

    /// <summary>The coat put on a top, or taken off it; names of tops that are no more are dropped. It stays on the last of its tops.</summary>
    /// <param name="tops">All of the job's.</param>
    public static CoatDocument Put(this CoatDocument coat, TopDocument top, bool on, IReadOnlyList<TopDocument> tops)
    {
        List<string> named = [.. tops.Where(t => Same(t.Name, top.Name) ? on : coat.GoesOn(t)).Select(t => t.Name.Trim())];
        return named.Count == 0 ? coat : coat with { OnTops = named.Count == tops.Count ? null : named };
    }

    /// <summary>
    /// The job with a top under another name, which the coats that name it follow. While it is typed through the name of another
    /// top they keep the name before that, and follow it again from there.
    /// </summary>
    /// <param name="top">Its place among the tops, from 0.</param>
    public static JobDocument Renamed(this JobDocument job, int top, string name)
    {
        var renamed = job with { Tops = [.. job.Tops.Select((t, i) => i == top ? t with { Name = name } : t)] };
        bool IsOfAnother(string n) => job.Tops.Where((_, i) => i != top).Any(t => Same(t.Name, n));
        var was = job.Tops[top].Name;
        if (IsOfAnother(was)) was = OfNoTop(job) ?? was;
        if (IsOfAnother(was) || IsOfAnother(name)) return renamed;
        return renamed with { System = [.. job.System.Select(c => c.OnTops is null ? c : c with { OnTops = [.. c.OnTops.Select(n => Same(n, was) ? name.Trim() : n)] })] };
    }

    /// <summary>The one name that coats give and no top has; null where there is none, or several.</summary>
    private static string? OfNoTop(JobDocument job) =>
        job.System.SelectMany(c => c.OnTops ?? []).Where(n => !job.Tops.Any(t => Same(t.Name, n))).Distinct(StringComparer.OrdinalIgnoreCase).ToList() is [var one] ? one : null;

    /// <summary>The job without a top; coats that go on other tops too leave it. One for it alone keeps its name, and says that it is no more.</summary>
    /// <param name="top">Its place among the tops, from 0.</param>
    public static JobDocument WithoutTop(this JobDocument job, int top)
    {
        IReadOnlyList<TopDocument> left = [.. job.Tops.Where((_, i) => i != top)];
        return job with
        {
            Tops = left,
            System = [.. job.System.Select(c => c.OnTops is null || !left.Any(c.GoesOn) ? c : c with { OnTops = [.. c.OnTops.Where(n => left.Any(t => Same(n, t.Name)))] })],
        };
    }

    private static bool Same(string? a, string? b) => string.Equals(a?.Trim(), b?.Trim(), StringComparison.OrdinalIgnoreCase);
}
