using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>Reads tops: outline, edges, cutouts, planned joints. What only the closed outline can show is for Measure.</summary>
internal static class TopReading
{
    public static List<Top> ReadAll(Fields fields, JobDocument document)
    {
        if (document.Tops is not { Count: > 0 })
        {
            fields.Add("tops", "NoTops",
                v => v.Say("There is no top to coat.", "No hay ninguna cubierta que recubrir."),
                v => v.Say("Add a top with its outline.", "Añada una cubierta con su contorno."));
        }

        var (read, names) = (new List<Top>(), Fields.NoNames());
        foreach (var (top, path) in fields.Items("tops", document.Tops, Ranges.MostTops))
        {
            var before = fields.Count;
            var name = fields.UniqueName(path + ".name", top.Name, names);
            var made = ReadTop(fields, document.Units, path, name, top);
            if (fields.Count == before) read.Add(made!);
        }

        return read;
    }

    private static Top? ReadTop(Fields fields, UnitSystem units, string path, string name, TopDocument top)
    {
        var entered = top.Outline ?? new OutlineDocument();
        var letters = SideLetters.Of(entered);
        var thickness = Fields.Or(top.Thickness, Defaults.Thickness, e => fields.Length(path + ".thickness", e, Ranges.Thickness));
        var outline = OutlineReading.Read(fields, units, path + ".outline", entered);
        var edges = EdgeReading.ReadAll(fields, path + ".edges", top.Edges, letters, thickness);
        var cutouts = ReadCutouts(fields, path + ".cutouts", top.Cutouts);
        var breaks = ReadBreaks(fields, path + ".breaks", top.Breaks, letters);
        var dryPass = Fields.OrNull(top.DryPass, e => fields.Angle(path + ".dryPass", e, Ranges.DryPassDegrees));
        CheckPhotos(fields, path + ".photos", top.Photos);
        return outline is null ? null : new Top(name, thickness, outline, edges, cutouts, breaks, dryPass) { Path = path, Substrate = top.Substrate, SectionLines = ReadLines(fields, path + ".sectionLines", top.SectionLines, letters) };
    }

    /// <summary>Nothing is computed from a photo; but an id that is none would never find its picture.</summary>
    private static void CheckPhotos(Fields fields, string path, IReadOnlyList<PhotoDocument>? photos)
    {
        foreach (var (photo, place) in fields.Items(path, photos, Ranges.MostOnOneTop))
        {
            if (photo.Id is { Length: 64 } id && id.All(char.IsAsciiHexDigitLower)) continue;
            fields.Add(place + ".id", "PhotoIdUnusable",
                v => v.Say("The id of a photo is the SHA-256 of its file: 64 digits from 0 to 9 and a to f.", "El id de una foto es el SHA-256 de su archivo: 64 cifras de 0 a 9 y de a a f."),
                v => v.Say("Attach the photo again.", "Adjunte la foto otra vez."));
        }
    }

    private static List<Cutout> ReadCutouts(Fields fields, string path, IReadOnlyList<CutoutDocument>? cutouts)
    {
        var (read, names) = (new List<Cutout>(), Fields.NoNames());
        foreach (var (cutout, place) in fields.Items(path, cutouts, Ranges.MostOnOneTop))
        {
            var name = fields.UniqueName(place + ".name", cutout.Name, names);
            var (length, depth, radius) = ReadCutoutSize(fields, place, cutout);
            var along = fields.Length(place + ".along", cutout.Along, Ranges.Placed);
            var inward = fields.Length(place + ".in", cutout.In, Ranges.Placed);
            var rim = Fields.Or(cutout.Rim, 0, e => fields.Length(place + ".rim", e, Ranges.Strip));
            read.Add(new Cutout(name, cutout.Shape, length, depth, radius, along, inward, rim));
        }

        return read;
    }

    /// <summary>A circle is as long and as deep as its diameter.</summary>
    private static (double LengthM, double DepthM, double RadiusM) ReadCutoutSize(Fields fields, string path, CutoutDocument cutout)
    {
        if (cutout.Shape == CutoutShape.Circle)
        {
            var diameter = fields.Length(path + ".diameter", cutout.Diameter, Ranges.Side);
            return (diameter, diameter, diameter / 2);
        }

        var length = fields.Length(path + ".length", cutout.Length, Ranges.Side);
        var depth = fields.Length(path + ".depth", cutout.Depth, Ranges.Side);
        if (cutout.Shape != CutoutShape.RoundedRectangle) return (length, depth, 0);

        var radius = fields.Length(path + ".radius", cutout.Radius, Ranges.Side);
        OutlineReading.RadiusFits(fields, path + ".radius", radius, length, depth);
        return (length, depth, radius);
    }

    private static List<SectionLine> ReadLines(Fields fields, string path, IReadOnlyList<SectionLineDocument>? lines, IReadOnlyList<char> letters)
    {
        var read = new List<SectionLine>();
        foreach (var (line, place) in fields.Items(path, lines, Ranges.MostSectionLines))
        {
            var side = EdgeReading.Letter(fields, place + ".side", line.Side, letters);
            var at = fields.Length(place + ".at", line.At, Ranges.Placed);
            var inward = Fields.Or(line.In, 0, e => fields.Length(place + ".in", e, Ranges.Placed));
            (char, double)? to = line.ToSide is { Length: > 0 } letter
                ? (EdgeReading.Letter(fields, place + ".toSide", letter, letters), fields.Length(place + ".to", line.To, Ranges.Placed))
                : null;
            read.Add(new SectionLine(side, at, inward, to, line.On ?? SectionLineOn.Flat));
        }

        return read;
    }

    private static List<BreakLine> ReadBreaks(Fields fields, string path, IReadOnlyList<BreakDocument>? breaks, IReadOnlyList<char> letters)
    {
        var read = new List<BreakLine>();
        foreach (var (line, place) in fields.Items(path, breaks, Ranges.MostOnOneTop))
        {
            var side = EdgeReading.Letter(fields, place + ".side", line.Side, letters);
            read.Add(new BreakLine(side, fields.Length(place + ".at", line.At, Ranges.Side)));
        }

        return read;
    }
}
