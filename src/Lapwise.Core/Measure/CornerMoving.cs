using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>A corner that can be moved, named for the side that starts there.</summary>
/// <param name="At">In plan.</param>
public sealed record Corner(char Letter, PointM At);

/// <summary>What a moved corner gave: the outline as it is then written, or why the corner stays.</summary>
/// <param name="Sides">The two sides that meet at the corner, with their new lengths.</param>
/// <param name="Ring">Every corner of the new outline in plan, for a picture while it is being moved.</param>
public sealed record CornerMoved(OutlineDocument? Outline, Reason? Refused, IReadOnlyList<(char Side, double LengthM)> Sides, IReadOnlyList<PointM> Ring);

/// <summary>
/// Moves a corner of a measured outline. The two sides that meet there are moved, each square to itself, and no turn
/// changes; so what the tape left open before is what it leaves open after. What is written are lengths on the grid of a
/// tape: they stay the truth, and the drawing follows them.
/// </summary>
public static class CornerMoving
{
    /// <summary>A turn flatter than this says nothing about where its side lies.</summary>
    private const double LeastSine = 0.1;
    /// <summary>Less is what arithmetic leaves; the finest tape is read to more.</summary>
    private const double LeastChangeM = 2e-5;

    /// <summary>The corners that can be moved.</summary>
    public static IReadOnlyList<Corner> Of(MeasuredTop top)
    {
        ArgumentNullException.ThrowIfNull(top);
        var walk = new Walk(top.Top.Outline);
        return [.. Enumerable.Range(0, walk.Count).Where(i => !walk.IsHeld(i)).Select(i => new Corner(SideLetters.At(i), At(top, i)))];
    }

    /// <summary>The outline with one corner moved.</summary>
    /// <param name="outline">As entered; what does not change stays as it was typed.</param>
    /// <param name="top">The same, measured.</param>
    /// <param name="letter">One of <see cref="Of"/>; another stays where it is.</param>
    /// <param name="by">How far, in plan.</param>
    /// <param name="stepM">Grid for the lengths of the two sides, metres; above zero.</param>
    /// <param name="units">What the new lengths are written in.</param>
    public static CornerMoved Move(OutlineDocument outline, MeasuredTop top, char letter, PointM by, double stepM, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(top);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stepM);
        var walk = new Walk(top.Top.Outline);
        var after = letter - 'A';
        if (after < 0 || after >= walk.Count || walk.IsHeld(after)) return new CornerMoved(null, CornerIsHeld(letter), [], []);

        var before = walk.Before(after);
        // Each side goes so far that the other one ends on the grid.
        var beforeM = walk.OnGrid(before, told: after, walk[before].Square(by), stepM);
        var afterM = walk.OnGrid(after, told: before, walk[after].Square(by), stepM);
        var lengthsM = walk.LengthsM.ToArray();
        foreach (var (side, perMetre) in walk.Shifted(before)) lengthsM[side] += perMetre * beforeM;
        foreach (var (side, perMetre) in walk.Shifted(after)) lengthsM[side] += perMetre * afterM;

        (char, double)[] sides = [(SideLetters.At(before), lengthsM[before]), (SideLetters.At(after), lengthsM[after])];
        var gone = Enumerable.Range(0, walk.Count).FirstOrDefault(i => lengthsM[i] < Ranges.Side.Least, -1);
        if (gone >= 0) return new CornerMoved(null, SideWouldVanish(SideLetters.At(gone)), sides, []);
        return new CornerMoved(Written(outline, walk, lengthsM, new Voice(Language.English, units)), null, sides, walk.Ring(lengthsM, after, At(top, after), beforeM, afterM));
    }

    private static OutlineDocument Written(OutlineDocument outline, Walk walk, double[] lengthsM, Voice tape)
    {
        return outline.Shape switch
        {
            OutlineShape.Rectangle or OutlineShape.RoundedRectangle => outline with { Length = Of(0, outline.Length), Depth = Of(1, outline.Depth) },
            OutlineShape.L => outline with
            {
                Length = Of(0, outline.Length), RightLegLength = Of(1, outline.RightLegLength),
                RightLegDepth = Of(2, outline.RightLegDepth), Depth = Of(5, outline.Depth),
            },
            OutlineShape.U => outline with
            {
                Length = Of(0, outline.Length), RightLegLength = Of(1, outline.RightLegLength), RightLegDepth = Of(2, outline.RightLegDepth),
                LeftLegDepth = Of(6, outline.LeftLegDepth), LeftLegLength = Of(7, outline.LeftLegLength),
                Depth = Changed(walk.LengthsM[1] - walk.LengthsM[3], lengthsM[1] - lengthsM[3], outline.Depth),
            },
            _ => outline with { Sides = [.. (outline.Sides ?? []).Select((s, i) => s with { Length = Of(i, s.Length) ?? s.Length })] },
        };

        Entry? Of(int side, Entry? typed) => Changed(walk.LengthsM[side], lengthsM[side], typed);

        Entry? Changed(double wasM, double isM, Entry? typed) => Math.Abs(isM - wasM) < LeastChangeM ? typed : tape.Length(isM);
    }

    private static PointM At(MeasuredTop top, int corner) => top.Top.Outline is OutlineSpec.RoundedRectangle r
        ? new PointM(corner is 1 or 2 ? r.LengthM : 0, corner is 2 or 3 ? r.DepthM : 0)
        : top.Outline.Segments.First(s => s.Side == SideLetters.At(corner)).From;

    private static Reason CornerIsHeld(char letter) => new("CornerIsHeld", Limit.AtYourWord,
        v => v.Say($"Corner {letter} cannot be dragged: a curve, or two sides in one line, hold it.", $"La esquina {letter} no se puede arrastrar: la fija una curva, o dos lados en la misma línea."),
        v => v.Say("Change the lengths of its sides in their fields.", "Cambie las medidas de sus lados en sus campos."));

    private static Reason SideWouldVanish(char letter) => new("SideWouldVanish", Limit.AtYourWord,
        v => v.Say($"So far, side {letter} would have no length left.", $"Hasta ahí, el lado {letter} se quedaría sin largo."),
        v => v.Say("Let go nearer to where the corner was, or choose another shape.", "Suéltela más cerca de donde estaba, o elija otra forma."));

    /// <param name="DirectionRad">At its start; 0 along side A, clockwise on the page.</param>
    /// <param name="SweepRad">0 for a straight side; clockwise positive.</param>
    private readonly record struct Side(double LengthM, double TurnRad, double SweepRad, double DirectionRad)
    {
        public bool IsStraight => SweepRad == 0;
        public PointM Along => new(Math.Cos(DirectionRad), Math.Sin(DirectionRad));
        /// <summary>To the left of one who walks it: out of the top.</summary>
        public PointM Outward => new(Along.Y, -Along.X);
        public double Square(PointM by) => Dot(by, Outward);

        /// <summary>From its start to its end when it is so long.</summary>
        public PointM Chord(double lengthM)
        {
            var chordM = IsStraight ? lengthM : lengthM * Math.Sin(SweepRad / 2) / (SweepRad / 2);
            var direction = DirectionRad + (SweepRad / 2);
            return new PointM(chordM * Math.Cos(direction), chordM * Math.Sin(direction));
        }
    }

    /// <summary>The sides in walking order as they are meant: a shape's sizes give its sides, a walk has them.</summary>
    private sealed class Walk
    {
        private readonly List<Side> sides = [];

        public Walk(OutlineSpec outline)
        {
            const double right = Math.PI / 2;
            var heading = 0.0;
            switch (outline)
            {
                case OutlineSpec.Rectangle r: Box(r.LengthM, r.DepthM); break;
                case OutlineSpec.RoundedRectangle r: Box(r.LengthM, r.DepthM); break;
                case OutlineSpec.L l:
                    Add(l.LengthM, right);
                    Add(l.RightLegLengthM, right);
                    Add(l.RightLegDepthM, right);
                    Add(l.RightLegLengthM - l.DepthM, -right);
                    Add(l.LengthM - l.RightLegDepthM, right);
                    Add(l.DepthM, right);
                    break;
                case OutlineSpec.U u:
                    Add(u.LengthM, right);
                    Add(u.RightLegLengthM, right);
                    Add(u.RightLegDepthM, right);
                    Add(u.RightLegLengthM - u.DepthM, -right);
                    Add(u.LengthM - u.RightLegDepthM - u.LeftLegDepthM, -right);
                    Add(u.LeftLegLengthM - u.DepthM, right);
                    Add(u.LeftLegDepthM, right);
                    Add(u.LeftLegLengthM, right);
                    break;
                case OutlineSpec.Walk w:
                    foreach (var side in w.Sides) Add(side.LengthM, side.TurnRad, side.ArcRadiusM is { } radius ? side.LengthM / radius * (side.Bend == Bend.Right ? 1 : -1) : 0);
                    break;
            }

            void Box(double lengthM, double depthM)
            {
                for (var i = 0; i < 4; i++) Add(i % 2 == 0 ? lengthM : depthM, right);
            }

            void Add(double lengthM, double turnRad, double sweepRad = 0)
            {
                sides.Add(new Side(lengthM, turnRad, sweepRad, heading));
                heading += sweepRad + turnRad;
            }
        }

        public int Count => sides.Count;
        public Side this[int side] => sides[side];
        public IReadOnlyList<double> LengthsM => [.. sides.Select(s => s.LengthM)];
        public int Before(int side) => (side + Count - 1) % Count;
        private int After(int side) => (side + 1) % Count;

        /// <summary>A curve next to it, or two sides in one line, hold a corner where it is.</summary>
        public bool IsHeld(int corner)
        {
            if (Count < 3) return true;
            int[] around = [Before(Before(corner)), Before(corner), corner, After(corner)];
            return around.Any(i => !sides[i].IsStraight) || around[..3].Any(i => Math.Abs(Math.Sin(sides[i].TurnRad)) < LeastSine);
        }

        /// <summary>The lengths that change when a side goes outward by a metre: its own and those of its two neighbours.</summary>
        public (int Side, double PerMetre)[] Shifted(int side)
        {
            var (before, own, after) = (sides[Before(side)], sides[side], sides[After(side)]);
            var start = 1 / Dot(before.Along, own.Outward);
            var end = 1 / Dot(after.Along, own.Outward);
            return [(Before(side), start), (side, (end * Dot(after.Along, own.Along)) - (start * Dot(before.Along, own.Along))), (After(side), -end)];
        }

        /// <summary>So far outward, about, that the side it is told by ends on the grid; what does not move keeps a length that lies off it.</summary>
        public double OnGrid(int side, int told, double outwardM, double stepM)
        {
            var perMetre = Shifted(side).First(s => s.Side == told).PerMetre;
            var fromM = sides[told].LengthM;
            var toM = fromM + (perMetre * outwardM);
            return Math.Abs(toM - fromM) < stepM / 2 ? 0 : ((Math.Round(toM / stepM) * stepM) - fromM) / perMetre;
        }

        /// <summary>The corners in plan with these lengths, laid so that one of them has gone with its two sides.</summary>
        public IReadOnlyList<PointM> Ring(double[] lengthsM, int corner, PointM was, double beforeM, double afterM)
        {
            var (b, a) = (sides[Before(corner)].Outward, sides[corner].Outward);
            var across = (b.X * a.Y) - (b.Y * a.X);
            var at = new PointM(was.X + (((beforeM * a.Y) - (afterM * b.Y)) / across), was.Y + (((afterM * b.X) - (beforeM * a.X)) / across));
            var ring = new PointM[Count];
            for (var i = 0; i < Count; i++)
            {
                var side = (corner + i) % Count;
                ring[side] = at;
                var chord = sides[side].Chord(lengthsM[side]);
                at = new PointM(at.X + chord.X, at.Y + chord.Y);
            }
            return ring;
        }
    }

    private static double Dot(PointM a, PointM b) => (a.X * b.X) + (a.Y * b.Y);
}
