using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>Everything this phase finds wrong with a top, and everything it thinks worth measuring again.</summary>
internal static class MeasureFaults
{
    public static Fault TooLittleArea(string path, double leastSquareM) => new(path, "OutlineWithoutArea",
        v => v.Say(
            $"This outline encloses too little to be a top: less than about {v.Length(leastSquareM)} by {v.Length(leastSquareM)}.",
            $"Este contorno encierra muy poco para ser una cubierta: menos de unos {v.Length(leastSquareM)} por {v.Length(leastSquareM)}."),
        v => v.Say("Check its sizes and the unit of each.", "Revise las medidas y la unidad de cada una."));

    public static Fault WalkedLeft(string path) => new(path, "WalkedLeftHanded",
        v => v.Say("The turns go round to the left.", "Los giros van hacia la izquierda."),
        v => v.Say(
            "Walk clockwise with the top on your right, or change left turns to right ones.",
            "Recorra en sentido horario con la cubierta a su derecha, o cambie los giros a la izquierda por giros a la derecha."));

    public static Fault TurnsDoNotAddUp(string path, double turnsRad) => new(path, "TurnsDoNotAddUp",
        v => v.Say(
            $"The turns, arcs included, add up to {Degrees(v, turnsRad)} to the right; a closed outline makes 360°.",
            $"Los giros, con los arcos, suman {Degrees(v, turnsRad)} a la derecha; un contorno cerrado suma 360°."),
        v => v.Say(
            $"Check each turn: {Degrees(v, Math.Abs((2 * Math.PI) - turnsRad))} {(turnsRad < 2 * Math.PI ? "is missing" : "is too much")}.",
            $"Revise cada giro: {(turnsRad < 2 * Math.PI ? "faltan" : "sobran")} {Degrees(v, Math.Abs((2 * Math.PI) - turnsRad))}."));

    public static Fault DoesNotClose(string path, Traverse walked) => new(path, "OutlineDoesNotClose",
        v => v.Say(
            $"The walk misses its start by {v.Length(walked.MisclosureM)}, {v.Percent(walked.MisclosureM / walked.PerimeterM, 1)} of the way round: more than a tape explains. Suspect: {Sides(v, walked.Suspects)}.",
            $"El recorrido no llega a su inicio por {v.Length(walked.MisclosureM)}, el {v.Percent(walked.MisclosureM / walked.PerimeterM, 1)} de la vuelta: más de lo que explica una cinta. Sospechoso: {Sides(v, walked.Suspects)}."),
        v => v.Say($"Measure again: {Closers(v, walked)}.", $"Vuelva a medir: {Closers(v, walked)}."));

    public static Fault DiagonalDoesNotFit(string path, Diagonal d, double leastM, double mostM) => new(path, "DiagonalDoesNotFit",
        v => v.Say(
            $"No four-sided top has these sides and a diagonal {d.From}–{d.To} of {v.Length(d.LengthM)}.",
            $"Ninguna cubierta de cuatro lados tiene estos lados y una diagonal {d.From}–{d.To} de {v.Length(d.LengthM)}."),
        v => v.Say(
            $"Measure it again; with these sides it lies between {v.Length(leastM)} and {v.Length(mostM)}.",
            $"Vuelva a medirla; con estos lados está entre {v.Length(leastM)} y {v.Length(mostM)}."));

    public static Fault TooFarFromSquare(string path, Diagonal d, double offRad) => new(path, "TooFarFromSquare",
        v => v.Say(
            $"The diagonal {d.From}–{d.To} of {v.Length(d.LengthM)} puts a corner {Degrees(v, offRad)} out of square, though the corners were entered as square.",
            $"La diagonal {d.From}–{d.To} de {v.Length(d.LengthM)} deja una esquina {Degrees(v, offRad)} fuera de escuadra, aunque las esquinas se escribieron a escuadra."),
        v => v.Say(
            "Measure the diagonal again, or walk the sides with their true turns.",
            "Vuelva a medir la diagonal, o recorra los lados con sus giros reales."));

    public static Fault CrossesItself(string path, Meeting.Place place) => new(path, "OutlineCrossesItself",
        v => v.Say(
            $"The outline meets itself where side {place.SideA} comes to side {place.SideB}, {At(v, place.At)}.",
            $"El contorno se cruza consigo mismo donde el lado {place.SideA} llega al lado {place.SideB}, {At(v, place.At)}."),
        v => v.Say(
            $"Check the length and the turn of sides {place.SideA} to {place.SideB}.",
            $"Revise la longitud y el giro de los lados {place.SideA} a {place.SideB}."));

    public static Fault CutoutOutside(string path, Cutout cutout) => new(path, "CutoutOutside",
        v => v.Say($"{Named(v, cutout)} lies outside the top.", $"{Named(v, cutout)} queda fuera de la cubierta."),
        v => v.Say(
            "Place its centre: along side A from its start, then square in from side A.",
            "Sitúe su centro: a lo largo del lado A desde su inicio, y a escuadra hacia dentro desde el lado A."));

    public static Fault CutoutMeetsSide(string path, Cutout cutout, char side, PointM at) => new(path, "CutoutMeetsSide",
        v => v.Say(
            $"{Named(v, cutout)} reaches side {side}, {At(v, at)}.",
            $"{Named(v, cutout)} llega al lado {side}, {At(v, at)}."),
        v => v.Say(
            "Move it or make it smaller; if it is open to that side, walk the outline round it instead.",
            "Muévalo o redúzcalo; si está abierto por ese lado, recorra el contorno por su borde."));

    public static Fault CutoutsOverlap(string path, Cutout cutout, Cutout other) => new(path, "CutoutsOverlap",
        v => v.Say($"{Named(v, cutout)} overlaps {Named(v, other)}.", $"{Named(v, cutout)} se solapa con {Named(v, other)}."),
        v => v.Say("Move one of them, or enter them as one cutout.", "Mueva uno de ellos, o escríbalos como un solo hueco."));

    public static Fault BreakOutside(string path, BreakLine line, double sideM) => new(path, "BreakOutside",
        v => v.Say(
            $"The planned joint at {v.Length(line.AtM)} from the start of side {line.Side} is not on it: that side is {v.Length(sideM)} long.",
            $"La junta prevista a {v.Length(line.AtM)} del inicio del lado {line.Side} no cae en él: ese lado mide {v.Length(sideM)}."),
        v => v.Say("Give a distance between the two ends of the side.", "Escriba una distancia entre los dos extremos del lado."));

    public static Fault BreakOnCurve(string path, BreakLine line) => new(path, "BreakOnCurve",
        v => v.Say(
            $"Side {line.Side} is curved, so a planned joint can't stand square to it.",
            $"El lado {line.Side} es curvo, y una junta prevista no puede ir a escuadra con él."),
        v => v.Say("Place the joint from a straight side.", "Sitúe la junta desde un lado recto."));

    public static Fault ProfileDoesNotFit(string path, Profile profile, double thicknessM) => new(path, "ProfileDoesNotFit",
        v => v.Say(
            $"This profile with {v.Length(profile.RadiusM)} does not fit a top {v.Length(thicknessM)} thick.",
            $"Este perfil con {v.Length(profile.RadiusM)} no cabe en un grueso de {v.Length(thicknessM)}."),
        v => v.Say(
            $"Use at most {v.Length(EdgeProfiles.LargestRadiusM(profile.Shape, thicknessM))}, or correct the thickness.",
            $"Use como máximo {v.Length(EdgeProfiles.LargestRadiusM(profile.Shape, thicknessM))}, o corrija el grueso."));

    public static Fault ProfileWithoutWidth(string path) => new(path, "ProfileWithoutWidth",
        v => v.Say("This edge takes its width from a strip, and no width was given.", "Este canto toma su ancho de una tira, y no se escribió ninguno."),
        v => v.Say("Bend a strip of paper round the edge and measure it.", "Doble una tira de papel alrededor del canto y mídala."));

    public static Fault SplashEndWithoutWidth(string path) => new(path, "SplashEndWithoutWidth",
        v => v.Say("The end of this splash is to be coated, but how wide it is was not said.", "El extremo de este salpicadero va recubierto, pero no se dijo qué ancho tiene."),
        v => v.Say("Give the width of the splash's top; its ends are as wide.", "Escriba el ancho de la parte superior del salpicadero; los extremos tienen el mismo."));

    public static Reason MeasureAgain(Traverse walked) => new("OutlineLeftOpen", Limit.Note,
        v => v.Say(
            $"The walk misses its start by {v.Length(walked.MisclosureM)}; the tape's step explains {v.Length(walked.AllowedM)}. It was shared out over the sides. Suspect: {Sides(v, walked.Suspects)}.",
            $"El recorrido no llega a su inicio por {v.Length(walked.MisclosureM)}; el paso de la cinta explica {v.Length(walked.AllowedM)}. Se repartió entre los lados. Sospechoso: {Sides(v, walked.Suspects)}."),
        v => v.Say($"Measure again: {Closers(v, walked)}.", $"Vuelva a medir: {Closers(v, walked)}."));

    public static Reason TurnsShared(double misclosureRad) => new("TurnsShared", Limit.Note,
        v => v.Say(
            $"The turns miss a full round by {Degrees(v, Math.Abs(misclosureRad))}; it was shared out over them.",
            $"A los giros les {(misclosureRad > 0 ? "faltan" : "sobran")} {Degrees(v, Math.Abs(misclosureRad))} para una vuelta completa; se repartieron entre ellos."),
        v => v.Say("Nothing to do unless a turn looks wrong.", "No hay que hacer nada, salvo que un giro parezca mal."));

    public static Reason DiagonalDiffers(DiagonalCheck check, IReadOnlyList<char> suspects) => new("DiagonalDiffers", Limit.Note,
        v => v.Say(
            $"The diagonal {check.From}–{check.To} measures {v.Length(check.MeasuredM)}; the sides make it {v.Length(check.ComputedM)}. Suspect: the diagonal itself or {Sides(v, suspects)}.",
            $"La diagonal {check.From}–{check.To} mide {v.Length(check.MeasuredM)}; según los lados serían {v.Length(check.ComputedM)}. Sospechoso: la propia diagonal o {Sides(v, suspects)}."),
        v => v.Say("Measure them again.", "Vuelva a medirlos."));

    public static Reason WallsOutOfSquare(Diagonal d, IReadOnlyList<double> anglesRad) => new("WallsOutOfSquare", Limit.Note,
        v => v.Say(
            $"The diagonal {d.From}–{d.To} shows walls out of square: corners {Corners(v, anglesRad)}. The outline was made from the sides and the diagonal.",
            $"La diagonal {d.From}–{d.To} muestra paredes fuera de escuadra: esquinas {Corners(v, anglesRad)}. El contorno se hizo con los lados y la diagonal."),
        v => v.Say("Nothing to do unless a corner looks wrong.", "No hay que hacer nada, salvo que una esquina parezca mal."));

    private static string Corners(Voice v, IReadOnlyList<double> anglesRad) =>
        string.Join(", ", anglesRad.Select((a, i) => $"{SideLetters.At(i)} {Degrees(v, a)}"));

    private static string Closers(Voice v, Traverse walked) => string.Join(v.Say("; or ", "; o "), walked.Suspects
        .Select(s => (Side: s, LengthM: walked.ClosingLengthM(s)))
        .Select(s => s.LengthM > 0
            ? v.Say($"side {s.Side}, which would close best at {v.Length(s.LengthM)}", $"el lado {s.Side}, que cerraría mejor con {v.Length(s.LengthM)}")
            : v.Say($"side {s.Side}", $"el lado {s.Side}")));

    private static string Sides(Voice v, IReadOnlyList<char> sides) => sides.Count == 1
        ? v.Say($"side {sides[0]}", $"lado {sides[0]}")
        : v.Say("sides ", "lados ") + string.Join(", ", sides);

    private static string Named(Voice v, Cutout cutout) => cutout.Name.Length > 0
        ? v.Say($"The cutout “{cutout.Name}”", $"El hueco «{cutout.Name}»")
        : v.Say("The cutout", "El hueco");

    private static string At(Voice v, PointM at) => v.Say(
        $"{v.Length(at.X)} along side A and {v.Length(at.Y)} in",
        $"a {v.Length(at.X)} a lo largo del lado A y {v.Length(at.Y)} hacia dentro");

    private static string Degrees(Voice v, double radians) => v.Number(radians * 180 / Math.PI, 1) + "°";
}
