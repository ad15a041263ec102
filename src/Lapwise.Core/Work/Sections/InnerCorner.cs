using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>Where the outline turns into the top: two arms meet here. A rounded inner corner is one corner.</summary>
/// <param name="First">Where the side that comes in ends.</param>
/// <param name="Last">Where the side that goes out begins; the same point on a sharp corner.</param>
internal sealed record InnerCorner(PointM First, PointM Middle, PointM Last, Axis In, Axis Out)
{
    /// <summary>A gentler bend parts no arms.</summary>
    private const double LeastTurnRad = 20 * Math.PI / 180;
    private const double LongestChordM = 0.12;

    public static IEnumerable<InnerCorner> Of(PointM[] outline)
    {
        var count = outline.Length;
        PointM At(int i) => outline[(i + count) % count];
        Axis Leaving(int i) => Axis.From(At(i), At(i + 1));
        double Turn(int i) => Math.Atan2(Leaving(i - 1).Cross(Leaving(i)), Leaving(i - 1).Dot(Leaving(i)));
        bool TurnsIn(int i) => Turn(i) < -0.001;
        bool GoesOn(int i) => TurnsIn(i) && TurnsIn(i + 1) && At(i).DistanceTo(At(i + 1)) < LongestChordM;

        for (var first = 0; first < count; first++)
        {
            if (!TurnsIn(first) || GoesOn(first - 1)) continue;
            var (last, turn) = (first, Turn(first));
            while (GoesOn(last) && last - first < count) turn += Turn(++last);
            if (turn < -LeastTurnRad) yield return new InnerCorner(At(first), At((first + last) / 2), At(last), Leaving(first - 1), Leaving(last));
        }
    }

    /// <summary>The cuts that part the arms here, each from a point into the top.</summary>
    public IEnumerable<(PointM From, Axis Direction)> Cuts(CornerCut choice, Axis length, PointM[] outline)
    {
        var (onward, backward) = ((First, In), (Last, Out.Opposite));
        var onwardRunsAlong = Math.Abs(In.Dot(length)) >= Math.Abs(Out.Dot(length));
        return choice switch
        {
            CornerCut.WithTheLength => [onwardRunsAlong ? onward : backward],
            CornerCut.WithTheLegs => [onwardRunsAlong ? backward : onward],
            CornerCut.Mitred => [(Middle, Mitre(outline))],
            _ => [onward, backward],
        };
    }

    /// <summary>Towards the outer corner that lies nearest the bisector, else along the bisector.</summary>
    private Axis Mitre(PointM[] outline)
    {
        var bisector = Axis.From(default, new(In.X - Out.X, In.Y - Out.Y));
        var count = outline.Length;
        return Enumerable.Range(0, count)
            .Where(i => Axis.From(outline[(i + count - 1) % count], outline[i]).Cross(Axis.From(outline[i], outline[(i + 1) % count])) > Math.Sin(LeastTurnRad))
            .Where(i => outline[i] != Middle)
            .Select(i => Axis.From(Middle, outline[i]))
            .Where(direction => direction.Dot(bisector) > Math.Cos(LeastTurnRad))
            .DefaultIfEmpty(bisector)
            .MaxBy(direction => direction.Dot(bisector));
    }
}
