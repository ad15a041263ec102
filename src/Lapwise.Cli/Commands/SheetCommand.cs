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
        if (request.Paper is { } named && (!Enum.TryParse<PaperKind>(named, ignoreCase: true, out var known) || !Enum.IsDefined(known) || int.TryParse(named, out _)))
        {
            var words = string.Join(", ", Enum.GetNames<PaperKind>().Select(n => n.ToLowerInvariant()));
            return Faults.Print([new Fault("--paper", "OptionValueUnknown",
                x => x.Say($"\"{named}\" is not a choice here.", $"«{named}» no es una opción válida."),
                x => x.Say($"Use one of: {words}.", $"Use una de: {words}."))], v, terminal);
        }

        var sheet = Written(whole, v, request, path.EndsWith(".html", StringComparison.OrdinalIgnoreCase));
        if (OutFile.Write(path, sheet, v, terminal) is { } unwritten) return unwritten;
        if (request.Json) terminal.Json(new SheetAnswer(path, sheet.Length), SheetJson.Default.SheetAnswer);
        else terminal.Line(v.Say($"Job sheet: {path}", $"Hoja de trabajo: {path}"));

        var broken = Enumerable.Range(0, whole.Work.Coats.Count).Where(coat => !whole.Holds(coat)).ToList();
        if (request.Json) return broken.Count == 0 ? Outcome.Done : Outcome.DoesNotWork;
        foreach (var coat in broken)
        {
            terminal.Line(whole.Work.Coats[coat].Coat.Title(v));
            foreach (var reason in whole.ReasonsOf(coat).Where(r => r.Limit != Limit.Note)) terminal.Reason(reason, v);
        }

        return broken.Count == 0 ? Outcome.Done : Outcome.DoesNotWork;
    }

    private static byte[] Written(WholeJob whole, Voice v, Request request, bool isPage)
    {
        if (request.Paper is not { } named) return isPage ? Encoding.UTF8.GetBytes(JobSheet.Html(whole, v)) : JobSheet.Pdf(whole, v);
        var kind = Enum.Parse<PaperKind>(named, ignoreCase: true);
        return isPage ? Encoding.UTF8.GetBytes(Papers.Html(kind, whole, v, PaperBasis.None)) : Papers.Pdf(kind, whole, v, PaperBasis.None);
    }
}

internal sealed record SheetAnswer(string File, int Bytes);

[System.Text.Json.Serialization.JsonSourceGenerationOptions(PropertyNamingPolicy = System.Text.Json.Serialization.JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[System.Text.Json.Serialization.JsonSerializable(typeof(SheetAnswer))]
internal sealed partial class SheetJson : System.Text.Json.Serialization.JsonSerializerContext;
