using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>One straight line of a cut top: the stretches of it that sections meet along, in the plane of their face.</summary>
/// <param name="On">A point of the line.</param>
internal sealed record DrawnLine(Face Face, PointM On, Axis Along, IReadOnlyList<(PointM From, PointM To)> Stretches)
{
    /// <summary>The line runs between the ends that lie farthest apart: a corner it passes may bend it by a hair.</summary>
    public static DrawnLine Of(Face face, IReadOnlyList<(PointM From, PointM To)> stretches)
    {
        var longest = stretches.MaxBy(s => s.From.DistanceTo(s.To));
        var roughly = Axis.From(longest.From, longest.To);
        List<PointM> ends = [.. stretches.SelectMany(s => new[] { s.From, s.To }).OrderBy(roughly.Along)];
        return new DrawnLine(face, ends[0], Axis.From(ends[0], ends[^1]), stretches);
    }

    /// <summary>The middle of its longest stretch.</summary>
    public PointM Middle
    {
        get
        {
            var (from, to) = Stretches.MaxBy(s => s.From.DistanceTo(s.To));
            return Plane.Step(On, Along, Along.Along(Plane.Between(from, to, 0.5)) - Along.Along(On));
        }
    }

    /// <summary>Parts of the line with a gap between them, as before and behind a cutout.</summary>
    public IEnumerable<DrawnLine> Runs()
    {
        const double gapM = 0.001;
        var along = Along;
        var run = new List<(PointM From, PointM To)>();
        var reachedM = double.MinValue;
        foreach (var s in Stretches.Select(s => along.Along(s.From) <= along.Along(s.To) ? s : (From: s.To, To: s.From)).OrderBy(s => along.Along(s.From)))
        {
            if (run.Count > 0 && along.Along(s.From) > reachedM + gapM)
            {
                yield return this with { Stretches = run };
                run = [];
            }

            run.Add(s);
            reachedM = Math.Max(reachedM, along.Along(s.To));
        }

        yield return this with { Stretches = run };
    }

    /// <summary>Where the line, prolonged, crosses a polyline, and how far along that lies.</summary>
    public IEnumerable<(PointM At, double AlongM)> Crossings(IReadOnlyList<PointM> polyline)
    {
        var walkedM = 0.0;
        foreach (var (from, to) in polyline.Zip(polyline.Skip(1)))
        {
            var (a, b) = (Along.Across(from) - Along.Across(On), Along.Across(to) - Along.Across(On));
            if (a * b <= 0 && a != b) yield return (Plane.Between(from, to, a / (a - b)), walkedM + (a / (a - b) * from.DistanceTo(to)));
            walkedM += from.DistanceTo(to);
        }
    }

    /// <summary>The same line shifted so that it runs through a point, less what would then lie on no film; null where nothing is left.</summary>
    public DrawnLine? Through(PointM to)
    {
        var across = Along.Quarter;
        var byM = across.Along(to) - across.Along(On);
        List<(PointM, PointM)> left = [.. Stretches.Select(s => (Plane.Step(s.From, across, byM), Plane.Step(s.To, across, byM))).SelectMany(s => Plane.Inside([Face.Ring, .. Face.HoleRings], s.Item1, s.Item2))];
        return left.Count == 0 ? null : this with { On = Plane.Step(On, across, byM), Stretches = left };
    }
}

/// <summary>Writes the lines of a cut top down as a finisher would give them, so that the same top is cut the same way again.</summary>
internal static class LineWriting
{
    /// <summary>What counts as on a side: well under what a tape shows.</summary>
    private const double NearM = 0.0005;
    /// <summary>A corner this near the line lies on it.</summary>
    private const double OnLineM = 1e-6;
    private const double SquareWithin = 1e-5;

    /// <summary>Null where neither a side it is square to nor the outline it runs between can be found.</summary>
    public static SectionLine? Write(MeasuredTop top, DrawnLine line)
    {
        if (line.Face.Kind is not FaceKind.Flat) return new SectionLine(line.Face.Side!.Value, line.On.X, 0, null, SectionLineOn.Upright);
        return Square(top, line) ?? BetweenSides(top, line);
    }

    /// <summary>Square to a straight side: to the one it begins at, or else to the nearest.</summary>
    private static SectionLine? Square(MeasuredTop top, DrawnLine line)
    {
        var (along, middle) = (line.Along, line.Middle);
        SectionLine? best = null;
        var nearestM = double.MaxValue;
        foreach (var letter in top.Outline.Segments.Select(s => s.Side).Distinct())
        {
            var walkedM = 0.0;
            foreach (var segment in top.Outline.Segments.Where(s => s.Side == letter))
            {
                // No chord of an arc is square to anything for long.
                if (segment is Segment.Line) Consider(letter, segment.From, segment.To, walkedM);
                walkedM += Plane.Length([segment.From, .. segment.Flatten(TopCutting.ChordErrorM)]);
            }
        }

        return best;

        void Consider(char letter, PointM from, PointM to, double walkedM)
        {
            var (lengthM, direction) = (from.DistanceTo(to), Axis.From(from, to));
            var placeM = direction.Along(middle) - direction.Along(from);
            if (Math.Abs(direction.Dot(along)) > SquareWithin || placeM < -NearM || placeM > lengthM + NearM || !IsInward(top, from, direction, middle)) return;
            double FromSideM(PointM p) => Math.Abs(direction.Across(p) - direction.Across(from));
            var gapM = line.Stretches.Min(s => Math.Min(FromSideM(s.From), FromSideM(s.To)));
            if (gapM > nearestM - NearM) return;
            (best, nearestM) = (new SectionLine(letter, walkedM + Math.Clamp(placeM, 0, lengthM), gapM < NearM ? 0 : FromSideM(middle), null, SectionLineOn.Flat), gapM);
        }
    }

    /// <summary>Outlines are walked with the top on the right hand, seen from above.</summary>
    private static bool IsInward(MeasuredTop top, PointM from, Axis direction, PointM p) =>
        (direction.Across(p) - direction.Across(from) > 0) == (top.Outline.Segments.Sum(s => s.SignedAreaM2) > 0);

    /// <summary>Between the two places where it leaves the top, with its own place on it.</summary>
    private static SectionLine? BetweenSides(MeasuredTop top, DrawnLine line)
    {
        var (along, middle) = (line.Along, line.Middle);
        var meetings = new List<(char Side, double AtM, double PlaceM)>();
        foreach (var letter in top.Outline.Segments.Select(s => s.Side).Distinct())
        {
            var side = TopCutting.SideLine(top, letter);
            var walkedM = 0.0;
            foreach (var (from, to) in side.Zip(side.Skip(1)))
            {
                var (a, b) = (along.Across(from) - along.Across(middle), along.Across(to) - along.Across(middle));
                if (Math.Min(a, b) <= OnLineM && Math.Max(a, b) >= -OnLineM && Math.Abs(a - b) > OnLineM)
                {
                    var share = Math.Clamp(a / (a - b), 0, 1);
                    meetings.Add((letter, walkedM + (share * from.DistanceTo(to)), along.Along(Plane.Between(from, to, share)) - along.Along(middle)));
                }

                walkedM += from.DistanceTo(to);
            }
        }

        var (before, after) = (meetings.Where(m => m.PlaceM < 0).ToList(), meetings.Where(m => m.PlaceM > 0).ToList());
        if (before.Count == 0 || after.Count == 0) return null;
        var (start, end) = (before.MaxBy(m => m.PlaceM), after.MinBy(m => m.PlaceM));
        var beginsThere = line.Stretches.Any(s => Math.Abs(along.Along(s.From) - along.Along(middle) - start.PlaceM) < NearM || Math.Abs(along.Along(s.To) - along.Along(middle) - start.PlaceM) < NearM);
        return new SectionLine(start.Side, start.AtM, beginsThere ? 0 : -start.PlaceM, (end.Side, end.AtM), SectionLineOn.Flat);
    }
}
