using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Conditions.Exotherm;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Conditions;

/// <summary>
/// The two clocks of a coat in today's room: open time at the surface's temperature, pot life at the material's.
/// A test board of today outranks the sheet; with neither, a cautious guess says that it is one.
/// </summary>
internal static class Clocks
{
    // Short on purpose: no sheet was given. At 23 °C, the usual temperature of a data sheet.
    private static readonly TimeAt GuessedOpenTime = new(8 * 60, 23);
    private static readonly TimeAt GuessedPotLife = new(20 * 60, 23);

    // Data sheets are read at 23 ± 2 °C (ISO 9514, from memory); beyond that the sheet is being stretched.
    private const double StretchK = 2;

    // The guide specification states pot life at 50 % humidity and calls what shortens it "high".
    private const double HighHumidity = 0.6;

    public static (OpenTime Time, Basis Basis, IEnumerable<Reason> Reasons) OpenTimeOf(Coat coat, Room room)
    {
        if (coat.TestBoard is { } board)
        {
            return (board with { Origin = Origin.TestBoard },
                new Basis("t_o",
                    [
                        new(v => v.Say("test board: last good lap", "placa de prueba: último solape bueno"), _ => Voice.Span(board.Seconds)),
                        new(v => v.Say("test board: first lap that showed", "placa de prueba: primer solape que se ve"),
                            v => coat.TestBoardFirstBadS is { } bad ? Voice.Span(bad) : v.Say("not noted", "sin anotar")),
                    ], Sources.AsEntered),
                []);
        }

        var clock = new Clock("OpenTime", v => v.Say("open time", "tiempo abierto"), v => v.Say("the open time", "el tiempo abierto"), coat.Product.OpenTime, GuessedOpenTime,
            room.Surface.Celsius, v => v.Say("surface temperature T", "temperatura de la superficie T"),
            v => v.Say("Lap a test board in this room before the first section.", "Haga una placa de prueba en esta sala antes de la primera sección."));
        var (seconds, origin, basis, reasons) = clock.Read();
        if (FilmClosing.Of(coat, room) is not { } closing)
        {
            var notCounted = new BasisInput(v => v.Say("humidity, air movement and film thickness", "humedad, movimiento del aire y espesor"),
                v => v.Say("not counted: the data sheet gives no share of evaporation", "no se cuentan: la ficha técnica no da la parte de evaporación"));
            return (new OpenTime(seconds, origin), basis with { Inputs = [.. basis.Inputs, notCounted] }, [.. reasons, .. MovingAir(room)]);
        }

        var closes = seconds * closing.Factor;
        return (new OpenTime(closes, origin),
            new Basis($"{basis.Formula}; t_o = t / (e · E + 1 − e)", [.. basis.Inputs, .. closing.Inputs], Sources.FilmClosing),
            [.. reasons, .. ClosesOtherwise(seconds, closes)]);
    }

    // Less than this is within what a timer and a hygrometer tell.
    private const double WorthSaying = 0.05;

    private static IEnumerable<Reason> ClosesOtherwise(double sheetS, double closesS)
    {
        if (Math.Abs((closesS / sheetS) - 1) < WorthSaying) yield break;
        yield return new Reason(closesS < sheetS ? "FilmClosesSooner" : "FilmClosesLater", Limit.Note,
            v => closesS < sheetS
                ? v.Say($"The air, its movement or the film close it sooner: {Voice.Span(closesS)} instead of the data sheet's {Voice.Span(sheetS)} at this temperature.", $"El aire, su movimiento o el espesor la cierran antes: {Voice.Span(closesS)} en vez de los {Voice.Span(sheetS)} de la ficha a esta temperatura.")
                : v.Say($"The air or the film keep it open longer: {Voice.Span(closesS)} instead of the data sheet's {Voice.Span(sheetS)} at this temperature.", $"El aire o el espesor la mantienen abierta más tiempo: {Voice.Span(closesS)} en vez de los {Voice.Span(sheetS)} de la ficha a esta temperatura."),
            v => v.Say("It is reckoned, not seen: lap a test board in this room before the first section.", "Es un cálculo, no una observación: haga una placa de prueba en esta sala antes de la primera sección."));
    }

    public static (PotLife Time, Basis Basis, IEnumerable<Reason> Reasons) PotLifeOf(Coat coat, Room room, BatchHeat? heat)
    {
        var clock = new Clock("PotLife", v => v.Say("pot life", "vida de la mezcla"), v => v.Say("the pot life", "la vida de la mezcla"), coat.Product.PotLife, GuessedPotLife,
            room.Material.Celsius, v => v.Say("material temperature T", "temperatura del material T"),
            v => v.Say("Start with a small batch and time it.", "Empiece con una mezcla pequeña y tómele el tiempo."));
        var (seconds, origin, basis, reasons) = clock.Read();
        IEnumerable<Reason> byProduct = [.. HowItEnds(coat.Product), .. HumidAir(coat.Product, room), .. MassNotCounted(coat.Product)];

        // A life of a stated mass knows more than a clock that was guessed, and may only shorten one that was given.
        return heat is not null && (origin is Origin.Guess || heat.PourOutByS < seconds)
            ? (new PotLife(heat.PourOutByS, Origin.DataSheet), heat.Basis, [.. heat.Reasons(origin is Origin.Guess ? 0 : seconds), .. byProduct])
            : (new PotLife(seconds, origin), basis, [.. reasons, .. heat?.Reasons(seconds) ?? [], .. byProduct]);
    }

    private static IEnumerable<Reason> MassNotCounted(Product product)
    {
        if (product.MassLives.Count > 0 || !(product.EndsBy is EndOfPotLife.Overheats || product.Hazards.Contains(Hazard.HotMix))) yield break;
        yield return new Reason("MassNotCounted", Limit.Note,
            v => v.Say("A large batch heats itself and lives shorter; the data sheet as entered states no mass, so that is not counted here.",
                "Una mezcla grande se calienta sola y vive menos; la ficha técnica anotada no indica masa, así que aquí no se cuenta."),
            v => v.Say($"Enter a pot life with its mass, such as 100 g at {v.Temperature(25)}; until then mix small and pour out at once.", $"Anote una vida de mezcla con su masa, como 100 g a {v.Temperature(25)}; hasta entonces, mezcle poco y extiéndalo enseguida."));
    }

    private static IEnumerable<Reason> MovingAir(Room room)
    {
        if (room.AirMovement is not AirMovement.Moving) yield break;
        yield return new Reason("MovingAirDries", Limit.Note,
            v => v.Say("The air is moving: the film closes sooner than the data sheet says, by an amount not counted here.",
                "El aire se mueve: la película se cierra antes de lo que dice la ficha técnica, en una medida que aquí no se cuenta."),
            v => v.Say("Keep the ventilation that the safety data sheet asks for, off the wet film; lap a test board in this moving air.",
                "Mantenga la ventilación que pide la hoja de datos de seguridad, sin que dé en la película húmeda; haga una placa de prueba con este aire."));
    }

    private static IEnumerable<Reason> HowItEnds(Product product)
    {
        if (product.EndsBy is not EndOfPotLife.Hidden) yield break;
        yield return new Reason("OnlyTheClockTells", Limit.Note,
            v => v.Say($"{product.Name} looks and rolls the same after its pot life as before: only the clock tells.",
                $"{product.Name} se ve y se aplica igual antes y después de su vida de mezcla: solo el reloj lo dice."),
            v => v.Say("Write the use-by time on the cup when A touches B, and throw away what is left at that time.",
                "Escriba la hora límite en el vaso en cuanto A toque B, y deseche lo que quede a esa hora."));
    }

    private static IEnumerable<Reason> HumidAir(Product product, Room room)
    {
        if (!product.Hazards.Contains(Hazard.Isocyanate) || room.RelativeHumidity <= HighHumidity) yield break;
        yield return new Reason("HumidityShortensPotLife", Limit.Note,
            v => v.Say($"At {v.Percent(room.RelativeHumidity)} humidity an isocyanate mix lives shorter than its data sheet says, by an amount not counted here.",
                $"Con {v.Percent(room.RelativeHumidity)} de humedad, una mezcla con isocianato vive menos de lo que dice la ficha técnica, en una medida que aquí no se cuenta."),
            v => v.Say("Keep the lids on, mix smaller batches, or dry the air.", "Mantenga tapados los envases, haga mezclas más pequeñas o seque el aire."));
    }

    /// <summary>One time of the data sheet, to be read at one temperature.</summary>
    private sealed record Clock(string Code, Phrase Name, Phrase TheName, IReadOnlyList<TimeAt> Points, TimeAt Guess, double Celsius, Phrase Where, Phrase Proof)
    {
        public (double Seconds, Origin Origin, Basis Basis, IReadOnlyList<Reason> Reasons) Read() => TemperatureLaw.Through(Points) switch
        {
            null => Guessed(),
            TemperatureLaw.ThroughTwoPoints law => (law.SecondsAt(Celsius), Origin.DataSheet,
                new Basis("t = t₁ · exp(E/R · (1/T − 1/T₁)); E/R = ln(t₁/t₂) / (1/T₁ − 1/T₂)",
                    [.. Inputs(law.Cold, law.Hot), new(v => v.Say("activation energy E", "energía de activación E"), v => v.Number(law.EnergyKJPerMol, 1) + " kJ/mol")],
                    Sources.Arrhenius),
                Stretched(law)),
            TemperatureLaw.HalvingEachTenDegrees law => (law.SecondsAt(Celsius), Origin.DataSheet,
                new Basis("t = t₁ · 2^((T₁ − T) / 10 K)", Inputs(law.Point), Sources.Ufgs09971),
                TemperatureLaw.Contradict(Points) ? [Contradicts(law.Point)] : Stretched(law)),
            _ => throw new NotSupportedException(),
        };

        private (double, Origin, Basis, IReadOnlyList<Reason>) Guessed()
        {
            var law = new TemperatureLaw.HalvingEachTenDegrees(Guess);
            return (law.SecondsAt(Celsius), Origin.Guess,
                new Basis("t = t₁ · 2^((T₁ − T) / 10 K)", Inputs(Guess), Sources.CautiousGuess),
                [
                    new Reason(Code + "Guessed", Limit.Note,
                        v => v.Say($"The data sheet as entered does not give {TheName(v)}; {Voice.Span(Guess.Seconds)} at {v.Temperature(Guess.Celsius)} is a cautious guess.",
                            $"La ficha técnica anotada no da {TheName(v)}; {Voice.Span(Guess.Seconds)} a {v.Temperature(Guess.Celsius)} es una suposición prudente."),
                        v => v.Say("Enter it from the data sheet. ", "Anótelo de la ficha técnica. ") + Proof(v)),
                ]);
        }

        private IReadOnlyList<BasisInput> Inputs(params IReadOnlyList<TimeAt> points) =>
        [
            .. points.Select((p, i) => new BasisInput(
                v => $"{Name(v)} t{(i == 0 ? '₁' : '₂')}",
                v => v.Say($"{Voice.Span(p.Seconds)} at {v.Temperature(p.Celsius)}", $"{Voice.Span(p.Seconds)} a {v.Temperature(p.Celsius)}"))),
            new(Where, v => v.Temperature(Celsius)),
        ];

        private IReadOnlyList<Reason> Stretched(TemperatureLaw law)
        {
            var (least, most) = law.Given;
            if (Celsius >= least - StretchK && Celsius <= most + StretchK) return [];
            return
            [
                law is TemperatureLaw.HalvingEachTenDegrees
                    ? new Reason(Code + "ByRule", Limit.Note,
                        v => v.Say($"The data sheet gives {TheName(v)} at {v.Temperature(least)} only; at {v.Temperature(Celsius)} it is taken to halve for each {v.TemperatureDifference(10)} up.",
                            $"La ficha técnica da {TheName(v)} solo a {v.Temperature(least)}; a {v.Temperature(Celsius)} se supone que se reduce a la mitad por cada {v.TemperatureDifference(10)} más."),
                        Proof)
                    : new Reason(Code + "BeyondSheet", Limit.Note,
                        v => v.Say($"{v.Temperature(Celsius)} is outside what the data sheet answers for ({v.Temperature(least)} to {v.Temperature(most)}): {TheName(v)} is carried on by the law through its two points.",
                            $"{v.Temperature(Celsius)} queda fuera de lo que cubre la ficha técnica (de {v.Temperature(least)} a {v.Temperature(most)}): {TheName(v)} se prolonga por la ley que pasa por sus dos puntos."),
                        Proof),
            ];
        }

        private Reason Contradicts(TimeAt used) => new(Code + "SheetContradicts", Limit.Note,
            v => v.Say($"The data sheet as entered says that {TheName(v)} is longer where it is hotter; only {Voice.Span(used.Seconds)} at {v.Temperature(used.Celsius)} was used.",
                $"Según la ficha técnica anotada, {TheName(v)} se alarga con más calor; solo se usó {Voice.Span(used.Seconds)} a {v.Temperature(used.Celsius)}."),
            v => v.Say("Check the two points against the data sheet. ", "Revise los dos puntos en la ficha técnica. ") + Proof(v));
    }
}
