using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Conditions.Drying;

/// <summary>One lap of a test board.</summary>
/// <param name="Seconds">Age of the strip when it was lapped.</param>
/// <param name="Shows">A line is seen in raking light.</param>
public readonly record struct BoardLap(double Seconds, bool Shows);

/// <summary>What a test board tells: the open time lies between the two. Plans rest on the last good lap.</summary>
/// <param name="FirstBadS">Null where no lap showed: the open time is at least the last good lap.</param>
public sealed record BoardResult(double LastGoodS, double? FirstBadS);

/// <summary>
/// The test board: strips rolled at one time beside each other in today's room and lapped at rising minutes, looked at in
/// raking light once dry. Common practice, no source.
/// </summary>
public static class TestBoard
{
    private const int Strips = 8;

    /// <summary>When to lap each strip, seconds: from half the expected open time to one and three quarters of it, in steps a kitchen timer can show.</summary>
    public static IReadOnlyList<double> LapsAt(double expectedS)
    {
        var step = Math.Max(30, Math.Round(expectedS * 1.25 / (Strips - 1) / 30) * 30);
        var first = Math.Max(step, Math.Round(expectedS / 2 / 30) * 30);
        return [.. Enumerable.Range(0, Strips).Select(i => first + (i * step))];
    }

    public static IReadOnlyList<Phrase> Steps(IReadOnlyList<double> lapsAt) =>
    [
        v => v.Say("Do it in the room and at the hour of the job, on an offcut with the same undercoat, same roller, same film, air as it will be.",
            "Hágala en la sala y a la hora del trabajo, sobre un recorte con la misma capa de fondo, el mismo rodillo, la misma película y el mismo aire."),
        v => v.Say($"Mix a small batch. Mask {lapsAt.Count} strips about {v.Length(6 * Factors.MetresPerInch)} wide and roll one half of each, all within a minute. Start the clock.",
            $"Haga una mezcla pequeña. Marque {lapsAt.Count} franjas de unos {v.Length(6 * Factors.MetresPerInch)} y aplique la mitad de cada una, todas en menos de un minuto. Ponga en marcha el reloj."),
        v => v.Say($"Roll the other half of one strip, lapped into the first, at {Times(lapsAt)} min. Write the minute beside each.",
            $"Aplique la otra mitad de una franja, solapada con la primera, a los {Times(lapsAt)} min. Anote el minuto junto a cada una."),
        v => v.Say("Let it dry flat. Put a lamp low at one end and look along the laps towards it.",
            "Déjela secar en horizontal. Ponga una lámpara baja en un extremo y mire los solapes hacia ella."),
        v => v.Say("Note the latest lap that does not show and the earliest that does. The open time lies between; the plan rests on the first of the two.",
            "Anote el solape más tardío que no se ve y el más temprano que sí. El tiempo abierto está entre ambos; el plan se apoya en el primero."),
    ];

    /// <summary>Reads a board. Null with the fault where it tells nothing.</summary>
    public static (BoardResult? Result, Fault? Fault) Read(IReadOnlyList<BoardLap> laps)
    {
        var good = laps.Where(l => !l.Shows).Select(l => l.Seconds).DefaultIfEmpty(double.NaN).Max();
        var bad = laps.Where(l => l.Shows).Select(l => l.Seconds).DefaultIfEmpty(double.NaN).Min();
        if (double.IsNaN(good))
        {
            return (null, new Fault("laps", "NoGoodLap",
                v => v.Say("No lap of the board held: the film closes before the first of them.", "Ningún solape de la placa aguantó: la película se cierra antes del primero."),
                v => v.Say("Lap a new board that starts earlier.", "Haga otra placa que empiece antes.")));
        }

        if (good >= bad)
        {
            return (null, new Fault("laps", "BoardOutOfOrder",
                v => v.Say($"A lap at {Voice.Span(bad)} shows and one at {Voice.Span(good)} does not.", $"Un solape a {Voice.Span(bad)} se ve y otro a {Voice.Span(good)} no."),
                v => v.Say("Look again in raking light, or lap a new board: the two must not cross.", "Mire de nuevo con luz rasante, o haga otra placa: los dos no pueden cruzarse.")));
        }

        return (new BoardResult(good, double.IsNaN(bad) ? null : bad), null);
    }

    private static string Times(IReadOnlyList<double> seconds) => string.Join(" · ", seconds.Select(s => s % 60 == 0 ? $"{s / 60:0}" : $"{Math.Floor(s / 60):0}:30"));
}
