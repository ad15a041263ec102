namespace Lapwise.Core.Jobs;

/// <summary>Which tops a coat goes on, as it stands in the document: by their names, or all where none is named.</summary>
public static class CoatTops
{
    public static bool GoesOn(this CoatDocument coat, TopDocument top) => coat.OnTops is not { Count: > 0 } named || named.Any(n => Same(n, top.Name));

    /// <summary>The coat put on a top, or taken off it; names of tops that are no more are dropped. It stays on the last of its tops.</summary>
    /// <param name="tops">All of the job's.</param>
    public static CoatDocument Put(this CoatDocument coat, TopDocument top, bool on, IReadOnlyList<TopDocument> tops)
    {
        List<string> named = [.. tops.Where(t => ReferenceEquals(t, top) ? on : coat.GoesOn(t)).Select(t => t.Name.Trim())];
        return named.Count == 0 ? coat : coat with { OnTops = named.Count == tops.Count ? null : named };
    }

    /// <summary>
    /// The job with a top under another name, which the coats that name it follow. Not where two tops are of one name: which
    /// is meant cannot be told, and the coat says so.
    /// </summary>
    /// <param name="top">Its place among the tops, from 0.</param>
    public static JobDocument Renamed(this JobDocument job, int top, string name)
    {
        var was = job.Tops[top].Name;
        var others = job.Tops.Where((_, i) => i != top).Select(t => t.Name).ToList();
        var renamed = job with { Tops = [.. job.Tops.Select((t, i) => i == top ? t with { Name = name } : t)] };
        if (others.Exists(o => Same(o, was) || Same(o, name))) return renamed;
        return renamed with { System = [.. job.System.Select(c => c.OnTops is null ? c : c with { OnTops = [.. c.OnTops.Select(n => Same(n, was) ? name.Trim() : n)] })] };
    }

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
