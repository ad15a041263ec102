using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Bases;

/// <summary>What the clocks on site rest on: the issued plan, and what was marked.</summary>
public static class RunBases
{
    /// <summary>How long a lap may still wait.</summary>
    public static Basis Lap(Run run, RunningLap lap) => new("r = t_o − (t − s)",
        [
            OpenTime(run),
            .. new[] { lap.Lap.A, lap.Lap.B }.Where(run.IsBegun).Select(id => new BasisInput(
                v => v.Say($"the film of section {id} counts since", $"la película de la sección {id} cuenta desde"), v => SinceBegun(run, run.FilmSinceMs(run.Sections[id]), run.Sections[id].IsAssumed, v))),
            .. lap.JoinedBy is { } joins ? [new BasisInput(v => v.Say($"section {joins.Id} is not begun", $"la sección {joins.Id} no ha empezado"), v => v.Say("its own time at the pace seen comes off", "se descuenta su propio tiempo al ritmo visto"))] : Array.Empty<BasisInput>(),
        ], Sources.AsEntered);

    /// <summary>How long a batch may still be used.</summary>
    public static Basis Batch(Run run, ForecastBatch batch) => new("r = t_p − (t − t_0)",
        [
            new(v => v.Say("pot life t_p of the issued plan", "vida de la mezcla t_p del plan emitido"), _ => Voice.Span(run.Plan.PotLifeMs / 1000.0)),
            .. run.Batches.Where(b => b.Batch == batch.Id).TakeLast(1).Select(b => new BasisInput(v => v.Say("A touched B t_0", "A tocó B t_0"), v => SinceBegun(run, b.AtMs, b.Assumed, v))),
        ], Sources.AsEntered);

    /// <summary>When the rest is done if everybody keeps to the order.</summary>
    public static Basis Forecast(Run run, Forecast forecast) => new("e = max e_i",
        [
            OpenTime(run),
            new(v => v.Say("sections still to roll", "secciones por aplicar"), v => v.Number(forecast.Sections.Count(s => s.Progress is Progress.Ahead), 0)),
            new(v => v.Say("pace", "ritmo"), v => v.Say("of the sections marked so far, else as planned; what was assumed teaches nothing", "el de las secciones marcadas hasta ahora, o el del plan; lo supuesto no enseña nada")),
        ], Sources.AsEntered);

    private static BasisInput OpenTime(Run run) => new(v => v.Say("open time t_o of the issued plan", "tiempo abierto t_o del plan emitido"), v => $"{Voice.Span(run.Plan.OpenTimeMs / 1000.0)} ({Say(run.Plan.OpenTimeOrigin, v)})");

    private static string SinceBegun(Run run, long atMs, bool assumed, Voice v)
    {
        var clock = Voice.Clock(Math.Max(0, atMs - run.Log[0].AtMs) / 1000.0);
        return assumed ? v.Say($"{clock} since the run began, assumed", $"{clock} desde el inicio, supuesto") : v.Say($"{clock} since the run began", $"{clock} desde el inicio");
    }

    private static string Say(Origin origin, Voice v) => origin switch
    {
        Origin.DataSheet => v.Say("data sheet", "ficha técnica"),
        Origin.TestBoard => v.Say("test board", "placa de prueba"),
        _ => v.Say("guess", "suposición"),
    };
}
