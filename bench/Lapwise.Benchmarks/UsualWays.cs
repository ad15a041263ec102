using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;

namespace Lapwise.Benchmarks;

/// <summary>
/// Two hundred generated kitchens under open times from 5 to 40 minutes: how many keep every lap under the plan and
/// under the usual ways at the same pace, the median worst margin, walks and the material lost.
/// </summary>
public static class UsualWays
{
    private const int Kitchens = 200;
    private static readonly int[] OpenTimesMin = [5, 6, 8, 10, 12, 15, 20, 30, 40];

    public static void Run(Options options)
    {
        var jobs = Enumerable.Range(0, Kitchens).Select(i => Kitchen(new Random((options.Seed * 10_007) + i), i)).Select(Read).ToList();
        var rows = OpenTimesMin.Select(minutes => Row(jobs, minutes)).ToList();
        Report.Write(options, $"usual-ways-seed-{options.Seed}",
        [
            "# Two hundred kitchens: the plan and the usual ways",
            "",
            "Straight and L-shaped runs with sinks and splashes, most with an island, some with a waterfall side; one person at the",
            "stated default pace, a fast clear coat. The plan counts its mixing inside the laps that span it; the usual ways (sections",
            "of about 4 ft × 2 ft in the best sweep from any corner; everything wetted first) are counted without any mixing, which",
            "favours them. *Holds*: no lap and no section older than the open time. *Keeps a fifth*: holds with 20 % of the open time",
            "in hand. Walks are changes of the side stood at. Material lost is roller, tray, cups and edges; for the usual way each",
            $"top is its own batch with its own roller charge (common practice, no source). Seed {options.Seed}. {Report.Machine}.",
            "",
            .. Report.Table(
                ["open time", "plan holds", "plan keeps a fifth", "usual sweep holds", "wet all first holds", "median worst margin, plan", "median worst margin, usual sweep", "walks, median", "lost by the plan, median", "lost the usual way, median"],
                rows),
        ]);
    }

    private static string[] Row(IReadOnlyList<(Job Job, MeasuredJob Measured)> jobs, int minutes)
    {
        var runs = jobs.Select(j => Run(j.Job, j.Measured, minutes)).ToList();
        Console.Error.WriteLine($"{minutes} min: {runs.Count(r => r.MarginS >= 0)} hold");
        string Share(Func<Outcome, bool> holds) => FormattableString.Invariant($"{runs.Count(r => holds(r)) * 100.0 / runs.Count:0} %");
        string Minutes(Func<Outcome, double> seconds) => FormattableString.Invariant($"{Report.Median(runs.Select(seconds)) / 60:+0.0;−0.0} min");
        string Ml(Func<Outcome, double> ml) => FormattableString.Invariant($"{Report.Median(runs.Select(ml)):0} mL");
        return
        [
            $"{minutes} min", Share(r => r.MarginS >= 0), Share(r => r.MarginS >= minutes * 12), Share(r => r.UsualMarginS >= 0), Share(r => r.WetFirstMarginS >= 0),
            Minutes(r => r.MarginS), Minutes(r => r.UsualMarginS), FormattableString.Invariant($"{Report.Median(runs.Select(r => (double)r.Walks)):0}"), Ml(r => r.LostMl), Ml(r => r.UsualLostMl),
        ];
    }

    private sealed record Outcome(double MarginS, double UsualMarginS, double WetFirstMarginS, int Walks, double LostMl, double UsualLostMl);

    private static Outcome Run(Job job, MeasuredJob measured, int minutes)
    {
        var open = new OpenTime(minutes * 60, Origin.TestBoard);
        var coats = job with { System = [job.System[0] with { TestBoard = open }] };
        var work = Planning.Plan(coats, measured, Judging.Judge(coats)).Coats[0];
        var takes = Consumption.Of(coats.System[0], job.Tools);
        double MarginOf(string baseline) => (minutes * 60) - (work.Baselines.Single(b => b.Name == baseline).WorstAgeMs / 1000.0);
        var usualLost = measured.Tops.Sum(top =>
        {
            var strips = top.Faces.SelectMany(f => f.Strips).ToList();
            var edge = takes.EdgeLossMl(strips.Sum(s => s.AreaM2), strips.Sum(s => s.LengthM));
            var batches = takes.BatchesFor(takes.NetMl(top.TakeOff.CoatedM2) + edge + takes.PerPersonMl);
            return edge + takes.PerPersonMl + (batches * takes.CupMlPerBatch);
        });
        return new Outcome(
            work.LapMarginMs / 1000.0,
            MarginOf("usual-sweep"),
            MarginOf("wet-all-first"),
            work.Sections.Zip(work.Sections.Skip(1)).Count(pair => (pair.First.StandSide, pair.First.Face.Top) != (pair.Second.StandSide, pair.Second.Face.Top)),
            work.Batches.Sum(b => b.VolumeMl - b.NetMl),
            usualLost);
    }

    private static (Job, MeasuredJob) Read(JobDocument document)
    {
        var job = JobReading.Read(document, Samples.Library) is { Job: { } read, Faults: [] } ? read : throw new InvalidOperationException($"{document.Name} cannot be read");
        return (job, Measuring.Measure(job) is { Faults: [] } measured ? measured : throw new InvalidOperationException($"{document.Name} cannot be measured"));
    }

    private static JobDocument Kitchen(Random random, int number)
    {
        var tops = new List<TopDocument> { random.Next(2) == 0 ? Straight(random) : Corner(random) };
        if (random.Next(4) > 0) tops.Add(Island(random));
        return new JobDocument
        {
            Name = $"Kitchen {number + 1}",
            Room = new RoomDocument { Air = "73 °F", Humidity = "45 %", Surface = "73 °F", Material = "73 °F" },
            Crew = [new PersonDocument { Name = "One" }],
            Tops = tops,
            System = [new CoatDocument { Product = "clear-fast-two-part" }],
        };
    }

    private static TopDocument Straight(Random random)
    {
        var length = random.Next(60, 145);
        return new TopDocument
        {
            Name = "Run",
            Outline = new OutlineDocument { Shape = OutlineShape.Rectangle, Length = $"{length} in", Depth = "25 1/2 in" },
            Edges = Edges(("A", Splash(random)), ("B", Wall()), ("C", Open()), ("D", random.Next(2) == 0 ? Wall() : Open())),
            Cutouts = [Sink(length / 2)],
        };
    }

    private static TopDocument Corner(Random random)
    {
        var length = random.Next(90, 150);
        return new TopDocument
        {
            Name = "Run",
            Outline = new OutlineDocument { Shape = OutlineShape.L, Length = $"{length} in", Depth = "25 1/2 in", RightLegLength = $"{random.Next(60, 120)} in", RightLegDepth = "25 1/2 in" },
            Edges = Edges(("A", Splash(random)), ("B", Splash(random)), ("C", Open()), ("D", Open()), ("E", Open()), ("F", Wall())),
            Cutouts = [Sink(length / 3)],
        };
    }

    private static TopDocument Island(Random random) => new()
    {
        Name = "Island",
        Outline = new OutlineDocument { Shape = OutlineShape.Rectangle, Length = $"{random.Next(60, 145)} in", Depth = $"{random.Next(36, 64)} in" },
        Edges = Edges(("A", Open()), ("B", random.Next(3) == 0 ? new EdgeDocument { Kind = EdgeKind.Waterfall, Drop = "34 1/2 in" } : Open()), ("C", Open()), ("D", Open())),
    };

    private static Dictionary<string, EdgeDocument> Edges(params (string Side, EdgeDocument Edge)[] edges) =>
        edges.ToDictionary(e => e.Side, e => e.Edge, StringComparer.Ordinal);

    private static EdgeDocument Open() => new() { Kind = EdgeKind.Open };

    private static EdgeDocument Wall() => new() { Kind = EdgeKind.Wall };

    private static EdgeDocument Splash(Random random) =>
        random.Next(2) == 0 ? Wall() : new EdgeDocument { Kind = EdgeKind.Splash, Height = "4 in", Joint = random.Next(2) == 0 };

    private static CutoutDocument Sink(int along) => new()
    {
        Name = "Sink", Shape = CutoutShape.RoundedRectangle, Length = "30 in", Depth = "16 in", Radius = "2 in", Along = $"{along} in", In = "13 in",
    };
}
