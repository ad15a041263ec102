using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>Places the lines that cut a run into strips.</summary>
internal static class Marching
{
    /// <summary>More strips than this on one run are never planned.</summary>
    private const int MostStrips = 200;
    /// <summary>A line is not put nearer than this to an end or to a line that is given.</summary>
    public const double NarrowestM = 0.1;
    private const double CloseM = 1e-9;

    /// <summary>The direction in which a shape is longest, as the long side of its least bounding rectangle; pointing right, or down.</summary>
    public static Axis LongAxis(IReadOnlyList<PointM> outline)
    {
        var best = (Axis: new Axis(1, 0), AreaM2: double.MaxValue);
        Consider(best.Axis);
        for (var i = 0; i < outline.Count; i++)
        {
            var (a, b) = (outline[i], outline[(i + 1) % outline.Count]);
            if (a.DistanceTo(b) >= NarrowestM) Consider(Axis.From(a, b));
        }

        return best.Axis.X < -1e-9 || (best.Axis.X < 1e-9 && best.Axis.Y < 0) ? best.Axis.Opposite : best.Axis;

        void Consider(Axis axis)
        {
            var (length, depth) = (Width(outline, axis), Width(outline, axis.Quarter));
            if (length * depth < best.AreaM2 * (1 - 1e-6)) best = (length >= depth * (1 - 1e-6) ? axis : axis.Quarter, length * depth);
        }
    }

    public static double Width(IReadOnlyList<PointM> outline, Axis axis)
    {
        var (least, most) = (double.MaxValue, double.MinValue);
        foreach (var p in outline) (least, most) = (Math.Min(least, axis.Along(p)), Math.Max(most, axis.Along(p)));
        return most - least;
    }

    /// <summary>
    /// Places along an axis that cut a piece into the fewest strips of at most so much film: of equal length where that is
    /// enough, else of equal film.
    /// </summary>
    /// <param name="given">Places that are cut in any case.</param>
    public static List<double> Places(FaceEdges face, Piece piece, Axis axis, IEnumerable<double> given, double mostFilmM2)
    {
        var (start, end) = piece.Extent(axis);
        var stops = new List<double> { start };
        foreach (var place in given.Order())
            if (place - stops[^1] >= NarrowestM && end - place >= NarrowestM) stops.Add(place);
        stops.Add(end);

        var places = stops.Skip(1).SkipLast(1).ToList();
        for (var i = 1; i < stops.Count; i++) places.AddRange(Between(stops[i - 1], stops[i]));
        places.Sort();
        return places;

        IEnumerable<double> Between(double a, double b)
        {
            var (before, film) = (Film(a), Film(b) - Film(a));
            var count = (int)Math.Clamp(Math.Ceiling((film / mostFilmM2) - 1e-9), 1, MostStrips);
            var equal = Enumerable.Range(0, count + 1).Select(k => a + ((b - a) * k / count)).ToList();
            if (Enumerable.Range(1, count).All(k => Film(equal[k]) - Film(equal[k - 1]) <= mostFilmM2 * (1 + 1e-9))) return equal.Skip(1).Take(count - 1);
            return Enumerable.Range(1, count - 1).Select(k => Where(before + (film * k / count), a, b));
        }

        double Film(double t) => face.FilmBeforeM2(piece, axis, t);

        // Film grows along the axis, straight in stretches: chords find a place in a few steps. An end that stays counts half.
        double Where(double film, double low, double high)
        {
            var (under, over) = (Film(low) - film, Film(high) - film);
            var stays = 0;
            while (high - low > CloseM && under < 0 && over > 0)
            {
                var place = Math.Clamp(low + ((high - low) * under / (under - over)), low + (CloseM / 2), high - (CloseM / 2));
                var miss = Film(place) - film;
                if (miss == 0) return place;
                if (miss < 0)
                {
                    (low, under) = (place, miss);
                    if (stays > 0) over /= 2;
                    stays = 1;
                }
                else
                {
                    (high, over) = (place, miss);
                    if (stays < 0) under /= 2;
                    stays = -1;
                }
            }

            return (low + high) / 2;
        }
    }

    /// <summary>Moves each place onto the nearest mark within so far, as long as no strip grows over so much film.</summary>
    public static List<double> OntoMarks(FaceEdges face, Piece piece, Axis axis, IReadOnlyList<double> places, IReadOnlyList<double> marks, double withinM, double mostFilmM2)
    {
        var (start, end) = piece.Extent(axis);
        var moved = places.ToList();
        for (var i = 0; i < moved.Count; i++)
        {
            var near = marks.Where(m => Math.Abs(m - moved[i]) <= withinM).OrderBy(m => Math.Abs(m - moved[i])).ToList();
            if (near.Count == 0) continue;
            var (before, after) = (i == 0 ? start : moved[i - 1], i + 1 == moved.Count ? end : moved[i + 1]);
            var mark = near[0];
            if (mark - before < NarrowestM || after - mark < NarrowestM) continue;
            var film = new[] { before, mark, after }.Select(t => face.FilmBeforeM2(piece, axis, t)).ToList();
            if (Math.Max(film[1] - film[0], film[2] - film[1]) <= mostFilmM2 * (1 + 1e-9)) moved[i] = mark;
        }

        return moved;
    }
}
