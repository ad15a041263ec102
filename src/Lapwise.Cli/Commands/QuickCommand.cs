using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Quick;
using Lapwise.Drawings;
using Lapwise.Files;

namespace Lapwise.Cli.Commands;

/// <summary>One sum without a job.</summary>
internal static class QuickCommand
{
    public static readonly Command Command = new("quick", ["SUM", "NAME=…"], [Phases.Measure, Phases.Materials, Phases.Conditions],
        v => v.Say("one sum without a job: " + Names, "un cálculo sin trabajo: " + Names),
        v => string.Join('\n', QuickSum.All.Select(s => $"{s.Name}: {s.Question(v)}")) + "\n" + v.Say(
            "`lapwise quick SUM` alone lists what it asks for. Example: lapwise quick film wet=6mil solids=62%. With --explain each number says its inputs, formula and source. With --out FILE.svg its picture, where it has one. Ends with 1 where a limit of the trade is broken.",
            "`lapwise quick SUM` a solas dice qué pide. Ejemplo: lapwise quick film wet=150um solids=62%. Con --explain cada número dice sus datos, fórmula y fuente. Con --out ARCHIVO.svg, su dibujo, si lo tiene. Termina con 1 donde se rompe un límite del oficio."),
        Run)
    { LastRepeats = true };

    private static string Names => string.Join(", ", QuickSum.All.Select(s => s.Name));

    private static Outcome Run(Request request, Terminal terminal)
    {
        var v = request.Voice;
        if (QuickSum.All.FirstOrDefault(s => s.Name == request.Files[0]) is not { } sum)
        {
            return Faults.Print([new Fault(request.Files[0], "SumUnknown",
                x => x.Say("There is no such sum.", "No existe ese cálculo.") + Nearest.DidYouMean(x, request.Files[0], [.. QuickSum.All.Select(s => s.Name)]),
                x => x.Say($"Use one of: {Names}.", $"Use uno de: {Names}."))], v, terminal);
        }

        if (request.Files.Count == 1)
        {
            Asks(sum, v, terminal);
            return Outcome.Done;
        }

        var (written, slips) = Written(sum, request.Files.Skip(1), terminal);
        var (result, faults) = slips.Count > 0 ? (null, slips) : sum.Answer(written, v.Units);
        if (result is null) return Faults.Print(faults, v, terminal);

        if (request.OutFile is { } path && Draw(path, sum, result, v, terminal) is { } unwritten) return unwritten;
        if (request.Json) terminal.Json(QuickAnswer.Of(sum, result, v), QuickJson.Default.QuickAnswer);
        else Print(result, request.Explain, v, terminal);
        return result.Reasons.All(r => r.Limit is Limit.Note) ? Outcome.Done : Outcome.DoesNotWork;
    }

    /// <summary>Values by name; a word without = and a name given twice are faults.</summary>
    private static (Dictionary<string, string> Values, IReadOnlyList<Fault> Faults) Written(QuickSum sum, IEnumerable<string> words, Terminal terminal)
    {
        var (values, faults) = (new Dictionary<string, string>(StringComparer.Ordinal), new List<Fault>());
        foreach (var word in words)
        {
            var equals = word.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0)
            {
                faults.Add(new Fault(word, "ValueWithoutName",
                    v => v.Say("This is not written as name=value.", "Esto no está escrito como nombre=valor."),
                    v => v.Say("Put quotes round a value with spaces: \"surface=1 1/2 in\".", "Ponga comillas si el valor lleva espacios: \"surface=1 1/2 in\".")));
            }
            else if (!values.TryAdd(word[..equals], word[(equals + 1)..]))
            {
                faults.Add(new Fault(word[..equals], "NameTwice",
                    v => v.Say("This name is given twice.", "Este nombre se da dos veces."),
                    v => v.Say("Keep one of them.", "Deje uno de ellos.")));
            }
        }

        foreach (var lines in sum.Fields.Where(f => f.IsLines && values.ContainsKey(f.Name)))
        {
            var (text, unreadable) = LoggerFile.Read(values[lines.Name], terminal.In);
            values[lines.Name] = text ?? "";
            faults.AddRange(unreadable.Select(f => f with { Path = lines.Name }));
        }

        return (values, faults);
    }

    private static Outcome? Draw(string path, QuickSum sum, QuickResult result, Voice v, Terminal terminal) =>
        result.Curve is { } curve ? OutFile.Write(path, CurveDrawing.Draw(curve, v, Sheet.Wide), v, terminal)
        : result.Day is { } day ? OutFile.Write(path, HourDrawing.Draw(day, v, Sheet.Wide), v, terminal)
        : Faults.Print([new Fault("--out", "NoPicture",
            x => x.Say($"There is no picture of {sum.Name} with these values.", $"No hay dibujo de {sum.Name} con estos valores."),
            x => x.Say("Pot life with a mass, cure with a swing, vapour and day have one.", "Lo tienen la vida de la mezcla con masa, el curado con variación, el vapor y el día."))], v, terminal);

    private static void Asks(QuickSum sum, Voice v, Terminal terminal)
    {
        terminal.Line(sum.Question(v));
        terminal.Line();
        var table = Screen.Table(new Column.Word(v.Say("Name", "Nombre")), new Column.Word(v.Say("Example", "Ejemplo")), new Column.Text(v.Say("What it is", "Qué es")));
        foreach (var field in sum.Fields)
            table.Row(field.Name, $"{field.Name}={(field.IsLines ? v.Say("room.csv", "sala.csv") : field.Example(v))}", field.Label(v) + (field.Needed ? v.Say(" (needed)", " (necesario)") : field.Words.Count > 0 ? $": {field.WordsInARow}" : field.Else is { } other ? v.Say($"; left out: {other}", $"; sin él: {other}") : ""));
        terminal.Tables().Write(table);
    }

    private static void Print(QuickResult result, bool explain, Voice v, Terminal terminal)
    {
        var table = Screen.Table(new Column.Text(v.Say("What", "Qué")), new Column.Number(v.Say("Value", "Valor")));
        foreach (var row in result.Rows) table.Row(row.Label(v), row.Shown(v));
        terminal.Tables().Write(table);
        if (explain) foreach (var basis in result.Rows.Select(r => r.Basis).Distinct()) terminal.Basis(basis, v);
        foreach (var reason in result.Reasons) terminal.Reason(reason, v);
        foreach (var (at, step) in result.Steps.Index()) terminal.Line($"{at + 1}. {step(v)}", indent: 3);
        var cautions = QuickAnswer.CautionsOf(result);
        if (cautions.Count > 0) terminal.Line();
        foreach (var caution in cautions) terminal.Line("! " + caution(v), indent: 2);
    }
}
