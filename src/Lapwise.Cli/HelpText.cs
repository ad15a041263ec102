using System.Text;
using Lapwise.Cli.Commands;
using Lapwise.Core;
using Lapwise.Core.Explain;

namespace Lapwise.Cli;

/// <summary>The help, in the order in which a job flows through its phases.</summary>
internal static class HelpText
{
    public static string Of(Voice v)
    {
        var text = new StringBuilder();
        Paragraph(text, v.Say(
            "lapwise plans the rolling of two-component coats over countertops: what to coat, how much to mix, and in which order, so that no lap is joined too late.",
            "lapwise planifica la aplicación a rodillo de recubrimientos de dos componentes en cubiertas: qué recubrir, cuánto mezclar y en qué orden, para que ningún solape se una tarde."));
        text.AppendLine(v.Say("Use", "Uso"));
        text.AppendLine(v.Say("  lapwise COMMAND FILES [options]", "  lapwise COMANDO ARCHIVOS [opciones]"));
        text.AppendLine();

        text.AppendLine(v.Say("The questions of a job, and the command that answers", "Las preguntas de un trabajo, y el comando que responde"));
        foreach (var phase in Phases.All)
        {
            Entry(text, phase.Name(v), phase.Question(v));
            var names = string.Join(", ", Command.All.Where(c => c.Answers.Contains(phase)).Select(c => c.Name));
            if (names.Length > 0) text.AppendLine(new string(' ', EntryIndent) + "→ " + names);
        }

        text.AppendLine();
        text.AppendLine(v.Say("Commands", "Comandos"));
        foreach (var command in Command.All) Entry(text, string.Join(' ', command.Arguments.Prepend(command.Name)), command.Summary(v));
        Entry(text, v.Say("help COMMAND", "help COMANDO"), v.Say("more about one command", "más sobre un comando"));
        text.AppendLine();

        Options(text, v);
        text.AppendLine(v.Say("Exit codes", "Códigos de salida"));
        Entry(text, "0", v.Say("done", "hecho"));
        Entry(text, "1", v.Say("the input is good, but the plan does not work; the reasons are printed", "la entrada es buena, pero el plan no funciona; se imprimen los motivos"));
        Entry(text, "2", v.Say("the input cannot be used; one line a fault, with its place", "la entrada no se puede usar; una línea por error, con su lugar"));
        text.AppendLine();
        Paragraph(text, v.Say(
            "A plan is arithmetic. Before you open a can: the safety data sheet, local codes and licensed practice come first.",
            "Un plan es aritmética. Antes de abrir una lata: primero la hoja de datos de seguridad, las normas locales y la práctica autorizada."));
        return text.ToString();
    }

    public static string Of(Command command, Voice v)
    {
        var text = new StringBuilder();
        text.AppendLine("lapwise " + string.Join(' ', command.Arguments.Prepend(command.Name)));
        text.AppendLine();
        Paragraph(text, v.Say("Answers", "Responde") + ": " + string.Join(" ", command.Answers.Select(p => p.Question(v)).DefaultIfEmpty(command.Summary(v))));
        foreach (var paragraph in command.More(v).Split('\n')) Paragraph(text, paragraph);
        Options(text, v);
        return text.ToString();
    }

    private static void Options(StringBuilder text, Voice v)
    {
        text.AppendLine(v.Say("Options", "Opciones"));
        Entry(text, "--json", v.Say("answer as JSON", "responder en JSON"));
        Entry(text, "--explain", v.Say("each number with inputs, formula and source", "cada número con datos, fórmula y fuente"));
        Entry(text, "--lang en|es", v.Say("language; left out: the job's own", "idioma; sin ella, el del trabajo"));
        Entry(text, "--units us|metric", v.Say("units; left out: the job's own", "unidades; sin ella, las del trabajo"));
        Entry(text, "--products DIR", v.Say("folder of products; left out: products beside the job", "carpeta de productos; sin ella, products junto al trabajo"));
        Entry(text, "--out FILE", v.Say("where sheet puts its PDF; timeline, quick and hours their picture (SVG)", "dónde deja sheet su PDF; timeline, quick y hours su dibujo (SVG)"));
        Entry(text, "--crews N", v.Say("with days: how many crews share the jobs", "con days: cuántos equipos se reparten los trabajos"));
        Entry(text, "--risk", v.Say("with plan: the chance of a line, of a batch gone off, of running short", "con plan: la probabilidad de una línea, de una mezcla pasada y de quedarse corto"));
        Entry(text, "--remedies", v.Say("with plan: what would make it work, each really planned", "con plan: qué lo haría funcionar, cada remedio planificado de verdad"));
        Entry(text, "--paper NAME", v.Say("with sheet, another paper: tickets, packing, days, care or packet", "con sheet, otro papel: tickets, packing, days, care o packet"));
        Entry(text, "--rates FILE", v.Say("with price: the shop's rates", "con price: las tarifas del taller"));
        Entry(text, "--shelf FILE", v.Say("with buy: the log of what is on the shelf", "con buy: el registro de lo que hay en el estante"));
        Entry(text, "--chance 95%", v.Say("with buy: the chance of not running short", "con buy: la probabilidad de no quedarse corto"));
        Entry(text, "-", v.Say("in place of a file: the standard input", "en lugar de un archivo: la entrada estándar"));
        text.AppendLine();
    }

    private const int EntryIndent = 22;

    private static void Entry(StringBuilder text, string name, string meaning)
    {
        foreach (var line in Screen.Wrap(("  " + name).PadRight(EntryIndent).Replace(' ', UnitGap.NoBreak) + meaning, EntryIndent))
            text.AppendLine(line);
    }

    private static void Paragraph(StringBuilder text, string paragraph)
    {
        foreach (var line in Screen.Wrap(paragraph)) text.AppendLine(line);
        text.AppendLine();
    }
}
