using Lapwise.Scheduling;

namespace Lapwise.Shared;

/// <summary>Invented shops: kitchens of common size with their waits, crews, tents and ways between sites. The same seed is the same shop.</summary>
internal static class Shops
{
    public const long DayMin = 24 * 60;

    /// <summary>8:00 to 16:30 on working days.</summary>
    public static IReadOnlyList<Window> Hours(int days) =>
        [.. Enumerable.Range(0, days).Where(d => d % 7 < 5).Select(d => new Window((d * DayMin) + (8 * 60), (d * DayMin) + (16 * 60) + 30))];

    public static ScheduleProblem Make(int seed, int jobs, int crews, int days, int tents = 0)
    {
        var random = new Random(seed);
        var hours = Hours(days);
        List<Visit> visits = [];
        List<Lag> lags = [];
        List<Hold> holds = [];
        for (var j = 0; j < jobs; j++)
        {
            var name = $"job {j + 1}";
            var first = visits.Count;
            Visit Crew(string id, int minutes) => new($"{name} {id}", name, minutes) { NeedsCrew = true, Together = name, Site = j, Open = hours };
            // Strip and clean, then sand and first coat, second coat, tent down, a trade puts back, caulk and touch-up.
            visits.Add(Crew("strip", 15 * random.Next(16, 32)));
            visits.Add(Crew("sand and coat", 15 * random.Next(18, 33)));
            visits.Add(Crew("second coat", 15 * random.Next(6, 13)));
            visits.Add(Crew("tent down", 45));
            visits.Add(new Visit($"{name} sink back", name, 60) { Open = hours });
            visits.Add(Crew("caulk and touch-up", 15 * random.Next(8, 13)));
            long End(int k) => visits[first + k].Length;
            lags.Add(new Lag(first, first + 1, End(0), $"{name}: order"));
            lags.Add(new Lag(first + 1, first + 2, End(1) + (8 * 60), $"{name}: earliest recoat"));
            lags.Add(new Lag(first + 2, first + 1, -(End(1) + (36 * 60)), $"{name}: latest recoat"));
            lags.Add(new Lag(first + 2, first + 3, End(2) + (4 * 60), $"{name}: film takes no dust"));
            lags.Add(new Lag(first + 3, first + 2, -(End(2) + (3 * DayMin)), $"{name}: air back on"));
            lags.Add(new Lag(first + 2, first + 4, End(2) + (2 * DayMin), $"{name}: light use"));
            lags.Add(new Lag(first + 2, first + 5, End(2) + (3 * DayMin), $"{name}: water"));
            lags.Add(new Lag(first + 4, first + 5, End(4), $"{name}: order"));
            lags.Add(new Lag(first + 4, first, -(12 * DayMin), $"{name}: without a sink"));
            if (tents > 0) holds.Add(new Hold(0, 1, first + 1, first + 3));
        }

        var places = Enumerable.Range(0, jobs).Select(_ => (X: random.Next(40), Y: random.Next(40))).ToArray();
        return new ScheduleProblem(visits, lags, tents > 0 ? [new Gear("tents", tents)] : [], holds,
            [.. Enumerable.Range(0, crews).Select(c => new Crew($"crew {c + 1}", [], []))],
            [.. places.Select(a => (IReadOnlyList<long>)[.. places.Select(b => (long)(Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y)))])],
            days * DayMin);
    }
}
