using Lapwise.Core.Explain;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.Work;

/// <summary>Plans written down by hand, to start a case from.</summary>
internal static class Plans
{
    private static readonly Face Face = Invented.Measured(1).Tops[0].Faces[0];

    /// <summary>One person, sections one after the other on a path of laps, from one batch mixed before.</summary>
    public static CoatWork Path(double openS, Origin origin, long mixMs, params IReadOnlyList<long> sectionMs)
    {
        var sections = new List<Section>();
        var now = mixMs;
        foreach (var took in sectionMs)
        {
            sections.Add(Section($"{sections.Count + 1}", 0, now, now + took, "A"));
            now += took;
        }

        var laps = sections.Zip(sections.Skip(1), (a, b) => new Lap(a.Id, b.Id, LapKind.Flat, 0.6, [], b.EndMs - a.StartMs)).ToList();
        return Of(openS, origin, sections, laps, [new Batch("A", 0, 0, mixMs, 3600_000, 300, 360, [.. sections.Select(s => s.Id)])]);
    }

    public static CoatWork Of(double openS, Origin origin, IReadOnlyList<Section> sections, IReadOnlyList<Lap> laps, IReadOnlyList<Batch> batches) => new(
        Invented.Coat, new OpenTime(openS, origin), new PotLife(3600, Origin.DataSheet), sections, laps, batches,
        new Proof(ProofState.Bounded, "order", 0), [], (long)(openS * 200), []);

    public static Section Section(string id, int person, long startMs, long endMs, string batch) => new(
        id, Face, [], 0.5, 0.5, 0.6, new PointM(0, 0), 'A', 0, person, startMs, startMs + ((endMs - startMs) * 2 / 3), endMs, batch);
}
