namespace Lapwise.Verifier.Rules;

/// <summary>The sections of a face lie inside it, do not overlap, and together are as large as it is: so they cover it once.</summary>
internal static class Partition
{
    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Partition);
        foreach (var twice in c.Plan.Sections.GroupBy(s => s.Id).Where(g => g.Count() > 1))
            f.Holds(false, "SectionTwice", $"{c.Place} section {twice.Key}", v => v.Say("Two sections have this id.", "Dos secciones tienen este id."));
        foreach (var section in c.Plan.Sections)
        {
            if (!f.Holds(c.Faces.TryGetValue(section.Face, out var face), "FaceUnknown", c.At(section), v => v.Say($"There is no face {section.Face}.", $"No hay cara {section.Face}."))) continue;
            f.Holds(face!.Top == section.Top, "FaceUnknown", c.At(section), v => v.Say($"{section.Face} is no face of {section.Top}.", $"{section.Face} no es una cara de {section.Top}."));
            f.Holds(CoatCase.Usable(section), "OutlineUnusable", c.At(section), v => v.Say("The outline is no closed line of points.", "El contorno no es una línea cerrada de puntos."));
        }

        foreach (var face in c.Faces.Values)
        {
            var own = new Region(face.HoleRings.Prepend(face.Ring));
            var sections = c.Sections.Where(s => s.Face == face).ToList();
            foreach (var s in sections)
            {
                f.Holds(!s.Region.Leaves(own), "SectionLeavesFace", c.At(s.Plan), v => v.Say($"It lies partly outside {face.Id}.", $"Sale en parte de {face.Id}."));
                Area("SectionAreaWrong", c.At(s.Plan), s.Plan.AreaM2, s.Region.AreaM2, 1e-6);
            }

            for (var i = 0; i < sections.Count; i++)
                for (var j = i + 1; j < sections.Count; j++)
                {
                    var (a, b) = (sections[i], sections[j]);
                    f.Holds(!a.Region.Overlaps(b.Region), "SectionsOverlap", c.At(a.Plan), v => v.Say($"It overlaps section {b.Plan.Id}.", $"Se superpone a la sección {b.Plan.Id}."));
                }

            var tolerance = Tolerance.AreaM2(own.PerimeterM);
            Area("FaceNotCovered", $"{c.Place} {face.Id}", sections.Sum(s => s.Region.AreaM2), own.AreaM2, tolerance);
            Area("FilmNotCovered", $"{c.Place} {face.Id}", sections.Sum(s => s.Plan.FilmM2), face.CoatedM2, tolerance);
            var edgesM = (Planned: sections.Sum(s => s.Plan.EdgeM), Own: face.Strips.Sum(s => s.LengthM));
            f.Holds(Math.Abs(edgesM.Planned - edgesM.Own) <= 0.001 + (edgesM.Own * 1e-3), "EdgesNotCovered", $"{c.Place} {face.Id}",
                v => v.Say($"The sections carry {v.Run(edgesM.Planned)} of edges; the face has {v.Run(edgesM.Own)}.", $"Las secciones llevan {v.Run(edgesM.Planned)} de cantos; la cara tiene {v.Run(edgesM.Own)}."));
        }

        void Area(string code, string place, double planned, double own, double tolerance) =>
            f.Holds(Math.Abs(planned - own) <= tolerance, code, place,
                v => v.Say($"The plan says {v.Number(planned, 6)} m²; it is {v.Number(own, 6)} m² (tolerance {v.Number(tolerance, 6)} m²).", $"El plan dice {v.Number(planned, 6)} m²; son {v.Number(own, 6)} m² (tolerancia {v.Number(tolerance, 6)} m²)."));
    }
}
