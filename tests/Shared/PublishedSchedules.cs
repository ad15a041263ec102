using System.Globalization;
using Lapwise.Scheduling;

namespace Lapwise.Shared;

/// <summary>Published instances of project scheduling, stated as the product states its own: a visit for each activity, gear for each resource.</summary>
internal static class PublishedSchedules
{
    private static readonly char[] Blanks = [' ', '\t'];

    public static ScheduleProblem Read(string path) =>
        path.EndsWith(".sm", StringComparison.OrdinalIgnoreCase) ? Psplib(File.ReadAllLines(path)) : ProGenMax(File.ReadAllLines(path));

    /// <summary>PSPLIB: precedence, requests and availabilities in sections of their own.</summary>
    private static ScheduleProblem Psplib(string[] lines)
    {
        int Find(string heading) => Array.FindIndex(lines, l => l.StartsWith(heading, StringComparison.Ordinal));
        List<int[]> Rows(int from) => [.. lines.Skip(from).TakeWhile(l => l.Length > 0 && char.IsAsciiDigit(l.TrimStart().FirstOrDefault())).Select(Numbers)];
        var precedence = Rows(Find("PRECEDENCE RELATIONS") + 2);
        var requests = Rows(Find("REQUESTS/DURATIONS") + 3);
        var capacities = Numbers(lines[Find("RESOURCEAVAILABILITIES") + 2]);
        var lags = precedence.SelectMany(p => p.Skip(3).Select(to => new Lag(p[0] - 1, to - 1, requests[p[0] - 1][2], $"{p[0]} before {to}")));
        return Stated(requests.Select(r => (r[2], r[3..])), [.. lags], capacities, requests.Sum(r => r[2]));
    }

    /// <summary>ProGen/max: first the arcs with their weights, then durations and requests, then capacities.</summary>
    private static ScheduleProblem ProGenMax(string[] lines)
    {
        var rows = lines.Where(l => l.Trim().Length > 0).Select(l => Numbers(l.Replace("[", "", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal))).ToList();
        var n = rows[0][0] + 2;
        var lags = rows.Skip(1).Take(n).SelectMany(r => Enumerable.Range(0, r[2]).Select(k => new Lag(r[0], r[3 + k], r[3 + r[2] + k], $"{r[0]} to {r[3 + k]}: {r[3 + r[2] + k]}"))).ToList();
        var requests = rows.Skip(1 + n).Take(n).ToList();
        var horizon = requests.Sum(r => r[2]) + lags.Sum(l => Math.Max(0, l.Least));
        return Stated(requests.Select(r => (r[2], r[3..])), lags, rows[^1], horizon);
    }

    private static ScheduleProblem Stated(IEnumerable<(int Length, int[] Needs)> activities, IReadOnlyList<Lag> lags, int[] capacities, long horizon) => new(
        [.. activities.Select((a, i) => new Visit($"{i}", $"{i}", a.Length) { Needs = [.. a.Needs.Select((n, r) => new Need(r, n)).Where(n => n.Amount > 0)] })],
        lags, [.. capacities.Select((c, r) => new Gear($"R{r + 1}", c))], [], [], [], horizon);

    private static int[] Numbers(string line) => [.. line.Split(Blanks, StringSplitOptions.RemoveEmptyEntries).Select(w => int.Parse(w, CultureInfo.InvariantCulture))];
}
