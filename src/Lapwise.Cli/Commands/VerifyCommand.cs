using System.Text.Json.Serialization;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Files;
using Lapwise.Verifier;

namespace Lapwise.Cli.Commands;

/// <summary>Checks a plan against its job with nothing of the search.</summary>
internal static class VerifyCommand
{
    public static readonly Command Command = new("verify", ["JOB", "PLAN"], [],
        v => v.Say("check a plan against its job, without the search", "comprobar un plan con su trabajo, sin el buscador"),
        v => v.Say("PLAN is what `lapwise plan JOB --json` wrote, for the same job. Everything is worked out again with geometry and arithmetic of the checker's own. Ends with 1 where anything is not as the plan says.",
            "PLAN es lo que escribió `lapwise plan JOB --json` para el mismo trabajo. Todo se calcula de nuevo con geometría y aritmética propias. Termina con 1 si algo no es como dice el plan."),
        Run);

    private static Outcome Run(Request request, Terminal terminal)
    {
        if (JobInput.Read(request, terminal) is not { } input) return Outcome.BadInput;
        var v = input.Voice;
        var read = JobReading.Read(input.Document, input.Products);
        var measured = read.Job is { } readable ? Measuring.Measure(readable) : null;
        IReadOnlyList<Fault> faults = [.. read.Faults, .. measured?.Faults ?? []];
        if (read.Job is not { } job || measured is null || faults.Count > 0) return Faults.Print(input.WithLines(faults), v, terminal);

        var (json, unreadable) = DocumentText.JsonOf(request.Files[1], terminal.In);
        if (json is null) return Faults.Print(unreadable, v, terminal);
        var (plan, notPlan) = Plan.Read(json);
        if (plan is null) return Faults.Print(notPlan, v, terminal);

        var verified = terminal.Show(x => x.Say("Checking…", "Comprobando…"), v, () => Verifying.Verify(job, measured, Judging.Judge(job, Estimating.Estimate(job, measured)), plan));
        if (request.Json)
        {
            terminal.Json(new VerifyAnswer(
                verified.Violations.Count == 0,
                [.. verified.Looked.Select(l => new LookedAnswer(l.At(v), l.Times))],
                [.. verified.Violations.Select(x => new ViolationAnswer(x.Code, x.Place, x.Text(v)))]), VerifyJson.Default.VerifyAnswer);
        }
        else
        {
            Print(verified, v, terminal);
        }

        return verified.Violations.Count == 0 ? Outcome.Done : Outcome.DoesNotWork;
    }

    private static void Print(Verification verified, Voice v, Terminal terminal)
    {
        var table = Screen.Table(new Column.Text(v.Say("Looked at", "Comprobado")), new Column.Number(v.Say("Times", "Veces")));
        foreach (var looked in verified.Looked) table.Row(looked.At(v), $"{looked.Times}");
        terminal.Tables().Write(table);
        foreach (var violation in verified.Violations) terminal.Line("✗ " + violation.Say(v), 2);
        terminal.Line(verified.Violations.Count == 0
            ? v.Say("✓ The plan is as it says. It rests on the pace, open time and measurements entered.", "✓ El plan es como dice. Se apoya en el ritmo, el tiempo abierto y las medidas anotadas.")
            : v.Say($"✗ {verified.Violations.Count} things are not as the plan says.", $"✗ {verified.Violations.Count} cosas no son como dice el plan."));
    }
}

internal sealed record VerifyAnswer(bool Holds, IReadOnlyList<LookedAnswer> Looked, IReadOnlyList<ViolationAnswer> Violations);

internal sealed record LookedAnswer(string At, int Times);

internal sealed record ViolationAnswer(string Code, string Place, string Text);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(VerifyAnswer))]
internal sealed partial class VerifyJson : JsonSerializerContext;
