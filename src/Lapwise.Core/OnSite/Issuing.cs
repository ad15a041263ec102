using System.Text;
using System.Text.Json;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Work;

namespace Lapwise.Core.OnSite;

/// <summary>Freezes the plan of one coat, so that a run holds all it was made from.</summary>
public static class Issuing
{
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    /// <param name="against">What the phases have to say against the coat; notes are left out.</param>
    /// <param name="units">What is said against it names its numbers in these, those of whoever begins the run.</param>
    /// <param name="fingerprint">See <see cref="FingerprintOf"/>.</param>
    /// <param name="core">Version of the program.</param>
    public static IssuedPlan Issue(Job job, int coat, CoatWork work, CoatSupply supply, IEnumerable<Reason> against, UnitSystem units, string fingerprint, string core)
    {
        var takes = Consumption.Of(work.Coat, job.Tools);
        var product = work.Coat.Product;
        var sections = work.Sections.Select(s => SectionOf(s, job, product, takes)).ToList();
        return new IssuedPlan
        {
            Job = job.Name,
            Coat = coat,
            Product = product.Name,
            Color = work.Coat.Color,
            Method = product.Method,
            Fingerprint = fingerprint,
            Core = core,
            OpenTimeMs = work.OpenTimeMs,
            OpenTimeOrigin = work.OpenTime.Origin,
            PotLifeMs = work.PotLifeMs,
            EndsBy = product.EndsBy,
            BatchAgeShare = work.BatchAgeShare,
            TargetMarginMs = work.TargetMarginMs,
            MixMs = work.Batches.Select(b => b.MixEndMs - b.MixStartMs).DefaultIfEmpty(0).Max(),
            StandMs = Ms(product.InductionS),
            LargestGivesMl = Math.Max(0, takes.LargestBatchMl - takes.CupMlPerBatch),
            Crew = [.. job.Crew.Select(p => p.Name)],
            Sections = sections,
            Laps = [.. work.Laps.Select(l => LapOf(l, work))],
            Batches = [.. work.Batches.Select(b => BatchOf(b, sections, supply.Tickets.FirstOrDefault(t => t.Batch == b.Id)))],
            Steps = [.. StepsOf(work)],
            Against = [.. against.Where(r => r.Limit is not Limit.Note).Select(r => ReasonOf(r, units))],
            Hazards = product.Hazards,
            Room = RoomFollowing.Issue(work.Coat, job.Room),
            Recoat = product.Recoat is { } r ? new IssuedRecoat { EarliestMs = Ms(r.EarliestS), LatestMs = Ms(r.LatestS), AtCelsius = r.AtCelsius } : null,
        };
    }

    /// <summary>
    /// A short name for everything the plan was made from: FNV-1a, 64 bits, over the documents as JSON. It tells inputs apart;
    /// it is no proof against a forger.
    /// </summary>
    public static string FingerprintOf(JobDocument job, IEnumerable<ProductDocument> library) =>
        Fnv1a([JobFile.Write(job), .. library.OrderBy(p => p.Id, StringComparer.Ordinal).Select(JobFile.Write)]);

    /// <summary>Constants of Fowler, Noll and Vo.</summary>
    internal static string Fnv1a(IEnumerable<string> texts)
    {
        var hash = 0xcbf29ce484222325UL;
        foreach (var b in texts.SelectMany(Encoding.UTF8.GetBytes)) hash = unchecked((hash ^ b) * 0x100000001b3UL);
        return hash.ToString("x16", System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>The order the plan was issued with: what is mixed ahead of its use, and a wait where somebody stands idle to keep laps young.</summary>
    internal static IReadOnlyList<IssuedTurn> TurnsOf(IssuedPlan plan)
    {
        var turns = new List<IssuedTurn>();
        var free = new Dictionary<int, long>();
        var rollers = plan.Sections.Select(s => s.Person).ToHashSet();
        var mixed = new HashSet<string>(StringComparer.Ordinal);
        foreach (var section in plan.Sections.OrderBy(s => s.StartMs).ThenBy(s => s.Person))
        {
            IReadOnlyList<string> mixes = [.. plan.Batches.Where(b => b.MixedBy == section.Person && b.MixStartMs < section.StartMs).OrderBy(b => b.MixStartMs).Select(b => b.Id).Where(mixed.Add)];
            var soonest = free.GetValueOrDefault(section.Person) + (mixes.Count * plan.MixMs) + (mixes.Contains(section.Batch) ? plan.StandMs : 0);
            var ready = soonest;
            foreach (var batch in plan.Batches.Where(b => b.MixStartMs < section.StartMs && b.Id == section.Batch && !mixes.Contains(b.Id)))
                ready = Math.Max(ready, batch.MixStartMs + plan.MixMs + plan.StandMs);
            foreach (var first in section.After)
                ready = Math.Max(ready, plan.Sections.Where(s => s.Id == first).Select(s => s.EndMs).DefaultIfEmpty(0).Max());
            var waits = section.StartMs - ready >= 1000 && rollers.Count > 1;
            turns.Add(new IssuedTurn
            {
                Section = section.Id, Person = section.Person, Batch = section.Batch, WaitMs = waits ? section.StartMs - soonest : null,
                Mixes = mixes.Count == 0 || mixes.SequenceEqual([section.Batch]) ? null : mixes,
            });
            free[section.Person] = section.EndMs;
        }

        return turns;
    }

    private static IssuedSection SectionOf(Section s, Job job, Product product, Consumption takes) => new()
    {
        Id = s.Id,
        Top = s.Face.Top,
        Face = s.Face.Kind,
        Side = s.Face.Side?.ToString(),
        Rings = [.. s.Rings.Select(r => (IReadOnlyList<IssuedPoint>)[.. r.Select(Rounded)])],
        FilmM2 = Math.Round(s.FilmM2, 4),
        TakesMl = Math.Round(takes.NetMl(s.FilmM2) + takes.EdgeLossMl(s.FilmM2 - s.FaceM2, s.EdgeM), 2),
        StandAt = Rounded(s.StandAt),
        StandSide = s.StandSide?.ToString(),
        DryPassDeg = Math.Round(s.DryPassDeg, 2),
        After = s.After,
        TakesMs = [.. job.Crew.Select((p, i) => i == s.Person ? s.EndMs - s.StartMs : SectionTime.Of(s, p.Pace, product.Method).TotalMs)],
        Person = s.Person,
        StartMs = s.StartMs,
        EndMs = s.EndMs,
        Batch = s.Batch,
    };

    private static IssuedLap LapOf(Lap lap, CoatWork work) => new()
    {
        A = lap.A,
        B = lap.B,
        Kind = lap.Kind,
        AtCorner = lap.Kind is LapKind.Flat && RunsFromCorner(lap, work.Sections.First(s => s.Id == lap.A).Face) ? true : null,
        LengthM = Math.Round(lap.LengthM, 4),
        Line = [.. lap.Line.Select(Rounded)],
    };

    /// <summary>One of its ends lies in an inner corner of the face.</summary>
    private static bool RunsFromCorner(Lap lap, Face face)
    {
        const double nearM = 0.005;
        if (lap.Line.Count == 0) return false;
        return Enumerable.Range(0, face.Ring.Count)
            .Where(i => Turn(face.Ring, i) < -0.5)
            .Any(i => face.Ring[i].DistanceTo(lap.Line[0]) < nearM || face.Ring[i].DistanceTo(lap.Line[^1]) < nearM);
    }

    /// <summary>Sine of the turn at a corner of a ring: below 0 at an inner corner, whichever way the ring runs.</summary>
    private static double Turn(IReadOnlyList<PointM> ring, int at)
    {
        var (p, q, r) = (ring[(at + ring.Count - 1) % ring.Count], ring[at], ring[(at + 1) % ring.Count]);
        var length = p.DistanceTo(q) * q.DistanceTo(r);
        var cross = ((q.X - p.X) * (r.Y - q.Y)) - ((q.Y - p.Y) * (r.X - q.X));
        var area = ring.Zip(ring.Skip(1).Append(ring[0]), (a, b) => (a.X * b.Y) - (b.X * a.Y)).Sum();
        return length > 0 ? cross / length * Math.Sign(area) : 0;
    }

    private static IssuedReason ReasonOf(Reason reason, UnitSystem units)
    {
        var (en, es) = (new Voice(Language.English, units), new Voice(Language.Spanish, units));
        return new IssuedReason
        {
            Code = reason.Code, Limit = reason.Limit, En = reason.Text(en), Es = reason.Text(es), RemedyEn = reason.Remedy(en), RemedyEs = reason.Remedy(es),
        };
    }

    private static IssuedBatch BatchOf(Batch batch, List<IssuedSection> sections, BatchTicket? ticket) => new()
    {
        Id = batch.Id,
        MixedBy = batch.MixedBy,
        MixStartMs = batch.MixStartMs,
        // What the cup shows is what is mixed; the plan's own amount stands only where no ticket could be written.
        VolumeMl = Math.Round(ticket?.VolumeMl ?? batch.VolumeMl, 1),
        GivesMl = Math.Round(sections.Where(s => s.Batch == batch.Id).Sum(s => s.TakesMl), 1),
        AMl = ticket?.AMl ?? 0,
        BMl = ticket?.BMl ?? 0,
        ThinnerMl = ticket is { ThinnerMl: > 0 and var ml } ? ml : null,
        AG = ticket?.AG ?? 0,
        BG = ticket?.BG ?? 0,
        ThinnerG = ticket is { ThinnerG: > 0 and var g } ? g : null,
    };

    /// <summary>
    /// A rolled coat: tape is drawn and the edges are looked under while the film of the top is open, since a run found later
    /// has to be sanded out (common practice, no source). A poured one: the product's own bubble passes and scraping.
    /// </summary>
    private static IEnumerable<IssuedStep> StepsOf(CoatWork work)
    {
        if (work.Steps.Count > 0) return PouredSteps(work);
        return work.Sections.GroupBy(s => s.Face.Top, StringComparer.Ordinal).SelectMany(top =>
        {
            IReadOnlyList<string> with = [.. top.Select(s => s.Id)];
            return new[] { BesideKind.EdgesLookedUnder, BesideKind.TapeOff }.Select(kind => new IssuedStep
            {
                Id = $"{top.Key}/{kind}", Kind = kind, Top = top.Key, With = with, FromMs = 0, ToMs = work.OpenTimeMs,
            });
        });
    }

    private static IEnumerable<IssuedStep> PouredSteps(CoatWork work) => work.Steps
        .Where(s => s.Kind is StepKind.BubblePass or StepKind.ScrapeDrips)
        .Select((s, i) =>
        {
            var begun = work.Sections.Where(x => s.Sections.Contains(x.Id)).Select(x => x.StartMs).DefaultIfEmpty(s.FromMs).Max();
            return new IssuedStep
            {
                Id = $"{s.Top}/{s.Kind}/{i + 1}",
                Kind = s.Kind is StepKind.BubblePass ? BesideKind.BubblesBroughtOut : BesideKind.DripsScraped,
                Top = s.Top,
                With = s.Sections,
                FromBegun = true,
                FromMs = Math.Max(0, s.FromMs - begun),
                ToMs = s.ToMs is { } to ? Math.Max(0, to - begun) : null,
            };
        });

    private static IssuedPoint Rounded(PointM p) => new() { X = Math.Round(p.X, 4), Y = Math.Round(p.Y, 4) };

    private static long Ms(double seconds) => (long)Math.Round(seconds * 1000);
}
