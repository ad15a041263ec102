using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work.Sections;

/// <summary>Cuts splashes and panels along their length.</summary>
internal static class UprightCutting
{
    /// <summary>How far a line is moved to meet one of the flat, as a share of a part's length.</summary>
    private const double ToFlatShare = 0.25;

    /// <param name="flatPlacesM">Where the sections of the flat begin and end along the fold.</param>
    /// <param name="givenM">The finisher's own lines, along the fold; with none of its own, an upright follows those of the flat.</param>
    public static IReadOnlyList<Piece> Cut(FaceEdges face, Fold fold, IReadOnlyList<double> flatPlacesM, IReadOnlyList<double> givenM, CutChoice choice, Aims aims, List<CutLine> lines)
    {
        var along = Axis.From(fold.LineOnOther[0], fold.LineOnOther[^1]);
        List<double> marks = [.. flatPlacesM.Select(m => along.Along(fold.LineOnOther[0]) + m)];
        IReadOnlyList<Piece> pieces = [face.Whole];
        foreach (var place in Places())
        {
            lines.Add(new CutLine(along, place, LapKind.Flat));
            pieces = [.. pieces.SelectMany(p => p.Split(lines[^1], lines.Count - 1))];
        }

        return pieces;

        IEnumerable<double> Places()
        {
            var whole = face.Whole;
            var largestM2 = aims.LargestSectionM2;
            switch (choice)
            {
                case CutChoice.Given when givenM.Count > 0:
                    return givenM.Select(m => along.Along(fold.LineOnOther[0]) + m);
                case CutChoice.Strips { Uprights: UprightCut.LinedUp } or CutChoice.Given when !fold.IsJoint:
                    return Marching.Places(face, whole, along, marks, largestM2);
                case CutChoice.Strips or CutChoice.Given:
                    var places = Marching.Places(face, whole, along, [], largestM2);
                    var (start, end) = whole.Extent(along);
                    return Marching.OntoMarks(face, whole, along, places, marks, ToFlatShare * (end - start) / (places.Count + 1), largestM2);
                case CutChoice.WholeFaces:
                    return [];
                case CutChoice.Pours pours:
                    return Marching.Places(face, whole, along, [], pours.MostFilmM2);
                default:
                    return FlatCutting.UsualPlaces(whole, along, FlatCutting.UsualLengthM);
            }
        }
    }
}
