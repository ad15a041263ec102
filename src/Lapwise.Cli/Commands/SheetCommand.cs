using System.Text;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Documents;

namespace Lapwise.Cli.Commands;

/// <summary>The sheet to work from, as a PDF or as a page that prints.</summary>
internal static class SheetCommand
{
    private const string StandardInput = "-";

    public static readonly Command Command = JobCommand.Of("sheet", [Phases.Work, Phases.Supply],
        v => v.Say("the job sheet as a PDF, or as a page (--out x.html)", "la hoja de trabajo en PDF, o como página (--out x.html)"),
        v => v.Say("Drawings, sections in order, laps with their margin, batch tickets and cautions. Left out, --out is the job's file name with .pdf, in this folder. Ends with 1 where the plan does not work; the sheet is made and says so.",
            "Dibujos, secciones en orden, solapes con su margen, boletas de mezcla y precauciones. Sin --out, el nombre del archivo del trabajo con .pdf, en esta carpeta. Termina con 1 donde el plan no funciona; la hoja se hace y lo dice."),
        Make);

    private static Outcome Make(WholeJob whole, Voice v, Request request, Terminal terminal)
    {
        var path = request.OutFile ?? (request.Files[0] == StandardInput ? "job" : Path.GetFileName(request.Files[0]).Split('.')[0]) + ".pdf";
        var sheet = path.EndsWith(".html", StringComparison.OrdinalIgnoreCase) ? Encoding.UTF8.GetBytes(JobSheet.Html(whole, v)) : JobSheet.Pdf(whole, v);
        if (OutFile.Write(path, sheet, v, terminal) is { } unwritten) return unwritten;
        if (request.Json) terminal.Json(new SheetAnswer(path, sheet.Length), SheetJson.Default.SheetAnswer);
        else terminal.Line(v.Say($"Job sheet: {path}", $"Hoja de trabajo: {path}"));

        var broken = Enumerable.Range(0, whole.Work.Coats.Count).Where(coat => !whole.Holds(coat)).ToList();
        if (request.Json) return broken.Count == 0 ? Outcome.Done : Outcome.DoesNotWork;
        foreach (var coat in broken)
        {
            terminal.Line(whole.Work.Coats[coat].Coat.Product.Name);
            foreach (var reason in whole.ReasonsOf(coat).Where(r => r.Limit != Limit.Note)) terminal.Reason(reason, v);
        }

        return broken.Count == 0 ? Outcome.Done : Outcome.DoesNotWork;
    }
}

internal sealed record SheetAnswer(string File, int Bytes);

[System.Text.Json.Serialization.JsonSourceGenerationOptions(PropertyNamingPolicy = System.Text.Json.Serialization.JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[System.Text.Json.Serialization.JsonSerializable(typeof(SheetAnswer))]
internal sealed partial class SheetJson : System.Text.Json.Serialization.JsonSerializerContext;
