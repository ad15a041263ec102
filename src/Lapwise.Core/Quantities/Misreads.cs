using Lapwise.Core.Explain;

namespace Lapwise.Core.Quantities;

/// <summary>Every reason why an entry gives no value.</summary>
internal static class Misreads
{
    public static Misread Missing(Kind kind) => new(
        "QuantityMissing", 0,
        v => v.Say($"Nothing is entered; {kind.Name(v)} is needed.", $"No hay nada escrito; se necesita {kind.Name(v)}."),
        WriteItAs(kind));

    public static Misread PlainNumberMissing() => new(
        "NumberMissing", 0,
        v => v.Say("Nothing is entered; a number is needed.", "No hay nada escrito; se necesita un número."),
        v => v.Say("Write it in digits, such as 2 or 0.5.", "Escríbalo con cifras, como 2 o 0.5."));

    public static Misread NumberMissing(string text, int at) => new(
        "NumberMissing", at,
        v => v.Say($"{Quote(v, text)} has no number at character {at + 1}.", $"{Quote(v, text)} no tiene un número en el carácter {at + 1}."),
        v => v.Say("Start with a number, then its unit.", "Empiece con un número y luego su unidad."));

    public static Misread NumberAmbiguous(string text, int at, string digits) => new(
        "NumberAmbiguous", at,
        v => v.Say($"{Quote(v, text)}: {Quote(v, digits)} at character {at + 1} can be read in two ways.", $"{Quote(v, text)}: {Quote(v, digits)} en el carácter {at + 1} se puede leer de dos maneras."),
        v => v.Say("Write thousands without a mark (1234), and decimals with a point (1.234).", "Escriba los miles sin separador (1234) y los decimales con punto (1.234)."));

    public static Misread NumberTooLong(string text, int at) => new(
        "NumberTooLong", at,
        v => v.Say($"{Quote(v, text)}: the number at character {at + 1} is too long to be a measurement.", $"{Quote(v, text)}: el número del carácter {at + 1} es demasiado largo para ser una medida."),
        v => v.Say("Check the digits.", "Revise las cifras."));

    public static Misread FractionNotUnderstood(string text, int at) => new(
        "FractionNotUnderstood", at,
        v => v.Say($"{Quote(v, text)}: the fraction at character {at + 1} cannot be used.", $"{Quote(v, text)}: la fracción del carácter {at + 1} no se puede usar."),
        v => v.Say("Write a fraction smaller than one over whole numbers, such as 1/2 or 96 3/16.", "Escriba una fracción menor que uno con números enteros, como 1/2 o 96 3/16."));

    public static Misread UnitMissing(Kind kind, string text, int at) => new(
        "UnitMissing", at,
        v => v.Say($"{Quote(v, text)} does not say its unit.", $"{Quote(v, text)} no dice su unidad."),
        WriteItAs(kind));

    public static Misread UnitUnknown(Kind kind, string text, int at) => new(
        "UnitUnknown", at,
        v => v.Say($"{Quote(v, text)}: {Quote(v, text[at..])} at character {at + 1} is not a unit of {kind.Name(v)}.", $"{Quote(v, text)}: {Quote(v, text[at..])} en el carácter {at + 1} no es una unidad de {kind.Name(v)}."),
        WriteItAs(kind));

    public static Misread UnitOfAnotherKind(Kind kind, Kind found, string text, int at) => new(
        "UnitOfAnotherKind", at,
        v => v.Say($"{Quote(v, text)} is {found.Name(v)}; {kind.Name(v)} is needed.", $"{Quote(v, text)} es {found.Name(v)}; se necesita {kind.Name(v)}."),
        WriteItAs(kind));

    public static Misread PartsDoNotFit(Kind kind, string text, int at) => new(
        "PartsDoNotFit", at,
        v => v.Say($"{Quote(v, text)}: the part at character {at + 1} does not fit the part before it.", $"{Quote(v, text)}: la parte del carácter {at + 1} no encaja con la anterior."),
        v => v.Say($"Each part must be smaller than one unit of the part before, in the same system: {kind.Examples(v)}.", $"Cada parte debe ser menor que una unidad de la anterior, en el mismo sistema: {kind.Examples(v)}."));

    public static Misread TextLeftOver(Kind kind, string text, int at) => new(
        "TextLeftOver", at,
        v => v.Say($"{Quote(v, text)}: {Quote(v, text[at..])} at character {at + 1} does not belong to {kind.Name(v)}.", $"{Quote(v, text)}: {Quote(v, text[at..])} en el carácter {at + 1} no pertenece a {kind.Name(v)}."),
        WriteItAs(kind));

    public static Misread ClockUnclear(string text) => new(
        "ClockUnclear", 0,
        v => v.Say($"{Quote(v, text)} can be hours and minutes or minutes and seconds.", $"{Quote(v, text)} pueden ser horas y minutos o minutos y segundos."),
        v => v.Say("Write 1:30 h, 1:30 min or 0:01:30, each part after the first with two digits below 60.", "Escriba 1:30 h, 1:30 min o 0:01:30, cada parte tras la primera con dos cifras menores que 60."));

    public static Misread TurnUnclear(string text, int at) => new(
        "TurnUnclear", at,
        v => v.Say($"{Quote(v, text)} is not a turn.", $"{Quote(v, text)} no es un giro."),
        v => v.Say("Write right 90, left 45, or 90 alone for a turn to the right.", "Escriba derecha 90, izquierda 45, o solo 90 para girar a la derecha."));

    /// <summary>Text as entered, in this language's quotation marks; control characters and great length do not reach a screen.</summary>
    public static string Quote(Voice voice, string text)
    {
        const int most = 40;
        var shown = text.Length > most ? text[..most] + "…" : text;
        shown = string.Concat(shown.Trim().Select(c => char.IsControl(c) ? '·' : c));
        return voice.Say($"“{shown}”", $"«{shown}»");
    }

    private static Phrase WriteItAs(Kind kind) => v => v.Say($"Write it as {kind.Examples(v)}.", $"Escriba, por ejemplo, {kind.Examples(v)}.");
}
