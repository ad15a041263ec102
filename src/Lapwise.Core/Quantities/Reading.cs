using Lapwise.Core.Explain;

namespace Lapwise.Core.Quantities;

/// <summary>
/// Turns what a person wrote into a number, or into a reason that points at the character. English and Spanish unit
/// names, fractions, feet with inches, decimal point or comma. Signs are read; ranges are for <see cref="Bounds"/>.
/// Working units say what a bare number means; null: the unit must be said.
/// </summary>
public static class Reading
{
    /// <summary>Metres. A bare number is in inches or millimetres, after the working units.</summary>
    public static Read<double> Length(Entry entry, UnitSystem? units) => Whole(Kinds.Length, entry, units);

    /// <summary>Micrometres of film. A bare number is in mil or µm.</summary>
    public static Read<double> Film(Entry entry, UnitSystem? units) => Whole(Kinds.Film, entry, units);

    /// <summary>Square metres. A bare number is in ft² or m².</summary>
    public static Read<double> Area(Entry entry, UnitSystem? units) => Whole(Kinds.Area, entry, units);

    /// <summary>Millilitres; gallons, quarts and ounces are the US ones. A bare number is in fl oz or mL.</summary>
    public static Read<double> Volume(Entry entry, UnitSystem? units) => Whole(Kinds.Volume, entry, units);

    /// <summary>Grams. A bare number is in ounces or grams.</summary>
    public static Read<double> Mass(Entry entry, UnitSystem? units) => Whole(Kinds.Mass, entry, units);

    /// <summary>Grams per millilitre. The unit must be said.</summary>
    public static Read<double> Density(Entry entry) => Whole(Kinds.Density, entry, null);

    /// <summary>A bare number, as <c>2.5</c> or <c>2,5</c>.</summary>
    public static Read<double> Number(Entry entry)
    {
        if (entry.IsBlank) return Misreads.PlainNumberMissing();
        var scanner = new Scanner(entry.Text);
        scanner.SkipSpaces();
        var sign = scanner.TakeDash() ? -1 : 1;
        if (scanner.Number().Failed(out var why, out var number)) return why;
        scanner.SkipSpaces();
        return scanner.AtEnd ? sign * number : Misreads.NumberMissing(entry.Text, scanner.Position);
    }

    /// <summary>Joules per gram. The unit must be said.</summary>
    public static Read<double> HeatPerMass(Entry entry) => Whole(Kinds.HeatPerMass, entry, null);

    /// <summary>Degrees Celsius. A bare number is in °F or °C.</summary>
    public static Read<double> Temperature(Entry entry, UnitSystem? units) => Whole(Kinds.Temperature, entry, units);

    /// <summary>Kelvin between two temperatures: 9 °F are 5. Not <see cref="Temperature"/>.</summary>
    public static Read<double> TemperatureDifference(Entry entry, UnitSystem? units) => Whole(Kinds.TemperatureDifference, entry, units);

    /// <summary>A fraction of one from a percentage. The sign % must be said, so that 0.2 is never in doubt.</summary>
    public static Read<double> Share(Entry entry) => Whole(Kinds.Share, entry, null);

    /// <summary>Relative humidity as a fraction of one. A bare number is in percent.</summary>
    public static Read<double> Humidity(Entry entry) => Whole(Kinds.Humidity, entry, null);

    /// <summary>Seconds. The unit must be said; <c>1:30 h</c>, <c>1:30 min</c> and <c>1:02:30</c> are read too.</summary>
    public static Read<double> Time(Entry entry) => Clock(entry) ?? Whole(Kinds.Time, entry, null);

    /// <summary>Square metres per second. The unit must be said.</summary>
    public static Read<double> AreaRate(Entry entry) => Whole(Kinds.AreaRate, entry, null);

    /// <summary>Metres per second. The unit must be said.</summary>
    public static Read<double> LengthRate(Entry entry) => Whole(Kinds.LengthRate, entry, null);

    /// <summary>Degrees.</summary>
    public static Read<double> Angle(Entry entry) => Whole(Kinds.Angle, entry, null);

    /// <summary>Radians, to the right positive: <c>right 90</c>, <c>left 45</c>, <c>izquierda 45</c>, or <c>90</c> alone for right.</summary>
    public static Read<double> Turn(Entry entry)
    {
        if (entry.IsBlank) return Misreads.Missing(Kinds.Angle);
        var scanner = new Scanner(entry.Text);
        var way = scanner.TakeLongest(Ways, w => w.Names);
        if (scanner.Number().Failed(out _, out var degrees)) return Misreads.TurnUnclear(entry.Text, scanner.Position);

        scanner.TakeLongest(Kinds.Angle.Units, u => u.Names);
        way ??= scanner.TakeLongest(Ways, w => w.Names) ?? Right;
        scanner.SkipSpaces();
        return scanner.AtEnd ? way.Sign * degrees * Math.PI / 180 : Misreads.TurnUnclear(entry.Text, scanner.Position);
    }

    private sealed record Way(int Sign, params string[] Names);

    private static readonly Way Right = new(1, "right", "r", "derecha", "der");
    private static readonly Way[] Ways = [Right, new Way(-1, "left", "l", "izquierda", "izq")];

    /// <summary>The whole entry as one signed quantity.</summary>
    private static Read<double> Whole(Kind kind, Entry entry, UnitSystem? units)
    {
        if (entry.IsBlank) return Misreads.Missing(kind);
        var scanner = new Scanner(entry.Text);
        if (Signed(ref scanner, kind, units).Failed(out var why, out var value)) return why;

        scanner.SkipSpaces();
        return scanner.AtEnd ? value : Misreads.TextLeftOver(kind, entry.Text, scanner.Position);
    }

    /// <summary>A number with its unit, and further parts where the kind has them.</summary>
    private static Read<double> Signed(ref Scanner scanner, Kind kind, UnitSystem? units)
    {
        scanner.SkipSpaces();
        var sign = scanner.TakeDash() ? -1 : 1;
        if (sign > 0) scanner.Take('+');

        if (Part(ref scanner, kind, kind.Bare(units)).Failed(out var why, out var before)) return why;
        var total = before.Unit.ToBase(sign * before.Number);
        while (kind.InParts && scanner.TakePartBreak())
        {
            var start = scanner.Position;
            if (Part(ref scanner, kind, before.Unit.Below).Failed(out why, out var part)) return why;
            if (part.Unit.System != before.Unit.System || part.Unit.ToBase(part.Number) >= before.Unit.Factor)
                return Misreads.PartsDoNotFit(kind, scanner.Text, start);
            total += part.Unit.ToBase(sign * part.Number);
            before = part;
        }

        return total;
    }

    private readonly record struct Amount(double Number, Unit Unit);

    private static Read<Amount> Part(ref Scanner scanner, Kind kind, Unit? bare)
    {
        if (scanner.Number().Failed(out var why, out var number)) return why;
        if (UnitHere(ref scanner, kind, bare).Failed(out why, out var unit)) return why;
        return new Amount(number, unit);
    }

    private static Read<Unit> UnitHere(ref Scanner scanner, Kind kind, Unit? bare)
    {
        scanner.SkipSpaces();
        var (text, start) = (scanner.Text, scanner.Position);
        if (scanner.TakeLongest(kind.Units, u => u.Names) is { } unit) return kind.Under is null ? unit : Over(ref scanner, kind, unit);
        if (scanner.AtEnd) return bare is null ? Misreads.UnitMissing(kind, text, start) : bare;

        var other = Kinds.Plain.FirstOrDefault(k => Starts(text, start, k));
        return other is null ? Misreads.UnitUnknown(kind, text, start) : Misreads.UnitOfAnotherKind(kind, other, text, start);
    }

    /// <summary>The unit over another, as <c>ft²/min</c>, <c>lb per gal</c>, <c>pies por minuto</c>.</summary>
    private static Read<Unit> Over(ref Scanner scanner, Kind kind, Unit over)
    {
        scanner.SkipSpaces();
        var start = scanner.Position;
        var isOver = scanner.Take('/') || scanner.TakeLongest(Per, p => p) is not null;
        if (!isOver) return scanner.AtEnd ? Misreads.UnitMissing(kind, scanner.Text, start) : Misreads.UnitUnknown(kind, scanner.Text, start);

        start = scanner.Position;
        return scanner.TakeLongest(kind.Under!.Units, u => u.Names) is { } under
            ? new Unit(over.Factor / under.Factor) { System = over.System }
            : Misreads.UnitUnknown(kind, scanner.Text, start);
    }

    private static readonly string[][] Per = [["per", "por"]];

    private static bool Starts(string text, int at, Kind kind) =>
        new Scanner(text[at..]) is var scanner && scanner.TakeLongest(kind.Units, u => u.Names) is not null;

    /// <summary>Hours, minutes and seconds with colons; null where there is no colon.</summary>
    private static Read<double>? Clock(Entry entry)
    {
        if (entry.IsBlank || !entry.Text.Contains(':')) return null;
        var words = entry.Text.Trim().Split([' ', UnitGap.NoBreak], 2, StringSplitOptions.TrimEntries);
        var fields = words[0].Split(':');
        var proper = fields.All(f => f.Length is > 0 and < 9 && f.All(char.IsAsciiDigit)) && fields.Skip(1).All(f => f.Length == 2 && f[0] < '6');
        if (!proper || fields.Length > 3) return Misreads.ClockUnclear(entry.Text);

        var unit = words.Length == 1 ? "" : words[1].ToLowerInvariant();
        var inSixties = fields.Aggregate(0.0, (sum, field) => (sum * 60) + double.Parse(field, System.Globalization.CultureInfo.InvariantCulture));
        return (fields.Length, unit) switch
        {
            (3, "" or "h") => inSixties,
            (2, "min") => inSixties,
            (2, "h") => inSixties * 60,
            _ => Misreads.ClockUnclear(entry.Text),
        };
    }
}
