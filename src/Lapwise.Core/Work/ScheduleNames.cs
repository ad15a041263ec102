using Lapwise.Core.Jobs;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Work;

/// <summary>Turns a schedule into the plan's own records: sections numbered in the order of their starts, laps with their ages.</summary>
internal static class ScheduleNames
{
    public static (IReadOnlyList<Section>, IReadOnlyList<Lap>) Of(CoatSchedule schedule, IReadOnlyList<Pace> paces, ApplicationMethod method)
    {
        var shapes = schedule.Tops.SelectMany(t => t.Cut.Sections).ToList();
        var placed = schedule.Found.Sections.OrderBy(p => p.StartMs).ThenBy(p => p.Person).ToList();
        var id = new string[shapes.Count];
        var at = new Placed[shapes.Count];
        for (var i = 0; i < placed.Count; i++)
        {
            id[placed[i].Section] = $"{i + 1}";
            at[placed[i].Section] = placed[i];
        }

        var after = LeanedOver(schedule).ToLookup(l => l.Over, l => id[l.Section]);
        var sections = placed.Select(p =>
        {
            var shape = shapes[p.Section];
            var wetMs = SectionTime.Of(shape, paces[p.Person], method).WetMs;
            return new Section(
                id[p.Section], shape.Face, shape.Rings, shape.FaceM2, shape.FilmM2, shape.StripLengthM, shape.StandAt, shape.StandSide,
                shape.DryPassDeg, p.Person, p.StartMs, p.StartMs + wetMs, p.EndMs, BatchId(p.Batch))
            {
                After = [.. after[p.Section]],
                UsedMs = schedule.Ages.UsedMs[p.Section],
            };
        }).ToList();

        var laps = new List<Lap>();
        var offset = 0;
        foreach (var top in schedule.Tops)
        {
            var corners = top.Cut.CornerCuts;
            foreach (var seam in top.Cut.Seams)
            {
                var (a, b) = (at[seam.A + offset], at[seam.B + offset]);
                var age = Math.Max(a.EndMs, b.EndMs) - Math.Min(a.StartMs, b.StartMs);
                var later = (b.StartMs, b.EndMs).CompareTo((a.StartMs, a.EndMs)) >= 0 ? b : a;
                laps.Add(new Lap(id[a.Section], id[b.Section], seam.Kind, seam.LengthM, seam.Line, age)
                {
                    UsedMs = OrderAges.OfLap(a, b, schedule.Ages.UsedMs) - age,
                    JoinedBy = id[later.Section],
                    Cut = seam.Cut,
                    AtCorner = seam.Cut is { } cut && corners.Contains(cut),
                });
            }

            offset += top.Cut.Sections.Count;
        }

        return (sections, laps);
    }

    /// <summary>Pairs of shapes, counted over all tops: the second lies between the first and where it is rolled from.</summary>
    private static IEnumerable<(int Section, int Over)> LeanedOver(CoatSchedule schedule)
    {
        var offset = 0;
        foreach (var top in schedule.Tops)
        {
            foreach (var section in top.Cut.Sections)
                foreach (var over in section.LeansOver) yield return (section.Index + offset, over + offset);
            offset += top.Cut.Sections.Count;
        }
    }

    /// <summary>A, B … Z, A1, B1 …</summary>
    public static string BatchId(int batch) => $"{(char)('A' + (batch % 26))}{(batch < 26 ? "" : $"{batch / 26}")}";
}
