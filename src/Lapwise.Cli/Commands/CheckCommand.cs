using Lapwise.Core;
using Lapwise.Core.Bases;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Cli.Commands;

/// <summary>Is the document good, does the tape close, may one coat today? Nothing is planned yet.</summary>
internal static class CheckCommand
{
    public static readonly Command Command = new("check", ["JOB"], [Phases.Measure, Phases.Conditions],
        v => v.Say("is the job readable, does the tape close, may I coat today", "¿se lee el trabajo, cierra la cinta, puedo aplicar hoy?"),
        v => v.Say("Ends with 1 where a tape does not close or the room speaks against a coat.", "Termina con 1 donde una cinta no cierra o la sala no permite una capa."),
        Run);

    private static Outcome Run(Request request, Terminal terminal)
    {
        if (JobInput.Read(request, terminal) is not { } input) return Outcome.BadInput;
        var v = input.Voice;
        var read = JobReading.Read(input.Document, input.Products);
        var measured = read.Job is { } readable ? Measuring.Measure(readable) : null;
        IReadOnlyList<Fault> faults = [.. read.Faults, .. measured?.Faults ?? []];
        if (read.Job is not { } job || measured is null || faults.Count > 0) return Faults.Print(input.WithLines(faults), v, terminal);

        var conditions = Judging.Judge(job, Estimating.Estimate(job, measured));
        var open = measured.Tops.Where(t => !t.Closure.Closes).ToList();
        var works = open.Count == 0 && conditions.Coats.All(c => c.MayCoat);
        if (request.Json) terminal.Json(CheckAnswer.Of(measured, conditions, v), CheckJson.Default.CheckAnswer);
        else
        {
            Print(job, measured, conditions, v, terminal);
            if (request.Explain) terminal.Bases([.. JobBases.Measured(measured), .. JobBases.Conditions(conditions)], v);
        }

        return works ? Outcome.Done : Outcome.DoesNotWork;
    }

    private static void Print(Job job, MeasuredJob measured, JobConditions conditions, Voice v, Terminal terminal)
    {
        terminal.Line(job.Name);
        terminal.Line();
        foreach (var top in measured.Tops)
        {
            var closure = top.Closure;
            terminal.Line(closure.Closes
                ? v.Say($"✓ {top.Top.Name}: closes ({v.Area(top.TakeOff.CoatedM2)} to coat)", $"✓ {top.Top.Name}: cierra ({v.Area(top.TakeOff.CoatedM2)} por recubrir)")
                : v.Say($"✗ {top.Top.Name}: {v.Length(closure.MisclosureM)} open, the tape explains {v.Length(closure.AllowedM)}. Measure again: {string.Join(", ", closure.SuspectSides)}.",
                    $"✗ {top.Top.Name}: {v.Length(closure.MisclosureM)} abiertos, la cinta explica {v.Length(closure.AllowedM)}. Vuelva a medir: {string.Join(", ", closure.SuspectSides)}."), 2);
        }

        terminal.Line();
        var room = job.Room;
        terminal.Line(v.Say(
            $"Room: air {v.Temperature(room.Air.Celsius)}, surface {v.Temperature(room.Surface.Celsius)}, material {v.Temperature(room.Material.Celsius)}, humidity {v.Percent(room.RelativeHumidity)}, dew point {v.Temperature(conditions.DewPointC)}.",
            $"Sala: aire {v.Temperature(room.Air.Celsius)}, superficie {v.Temperature(room.Surface.Celsius)}, material {v.Temperature(room.Material.Celsius)}, humedad {v.Percent(room.RelativeHumidity)}, punto de rocío {v.Temperature(conditions.DewPointC)}."), 2);
        foreach (var coat in conditions.Coats)
        {
            terminal.Line();
            terminal.Line((coat.MayCoat ? "✓ " : "✗ ") + v.Say(
                $"{coat.Coat.Title(v)}: open time {Voice.Span(coat.OpenTime.Seconds)} ({Of(coat.OpenTime.Origin, v)}), pot life {Voice.Span(coat.PotLife.Seconds)} ({Of(coat.PotLife.Origin, v)})",
                $"{coat.Coat.Title(v)}: tiempo abierto {Voice.Span(coat.OpenTime.Seconds)} ({Of(coat.OpenTime.Origin, v)}), vida de la mezcla {Voice.Span(coat.PotLife.Seconds)} ({Of(coat.PotLife.Origin, v)})"), 2);
            foreach (var vapour in coat.Vapours) terminal.Line("· " + vapour.Line(v), 2);
            foreach (var reason in coat.Reasons) terminal.Reason(reason, v);
        }

        terminal.Cautions(job, v);
    }

    private static string Of(Origin origin, Voice v) => Screen.Of(origin, v);
}
