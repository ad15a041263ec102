using System.Globalization;
using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;

namespace Lapwise.Cli.Commands;

/// <summary>How much of each product, and which kits to buy.</summary>
internal static class MaterialsCommand
{
    public static readonly Command Command = JobCommand.Of("materials", [Phases.Materials, Phases.Supply],
        v => v.Say("how much of each product, and the cheapest kits", "cuánto de cada producto, y los juegos más baratos"),
        v => v.Say("Net goes on the tops; loss stays in roller, tray and cups; need is both, A and B without thinner, and kits are bought by it.",
            "El neto va en las cubiertas; la pérdida queda en rodillo, bandeja y vasos; la necesidad es la suma, A y B sin diluyente, y los juegos se compran por ella."),
        (whole, voice, request, terminal) =>
        {
            if (request.Json) terminal.Json(Answering.Materials(whole), AnswerJson.Default.MaterialsAnswer);
            else Print(whole, voice, terminal);
            return Outcome.Done;
        });

    private static void Print(WholeJob whole, Voice v, Terminal terminal)
    {
        var table = Screen.Table(
            new Column.Word(v.Say("Coat", "Capa")), new Column.Number(v.Say("Net", "Neto")), new Column.Number(v.Say("Loss", "Pérdida")), new Column.Number(v.Say("Need", "Necesidad")),
            new Column.Number(v.Say("Thinner", "Diluyente")), new Column.Word(v.Say("Kits", "Juegos")), new Column.Number(v.Say("Cost", "Coste")));
        var amount = v.Volumes(whole.Materials.Coats.SelectMany(m => new[] { m.NetMl, m.LossMl, m.NeedMl }));
        var kit = v.Volumes(whole.Supply.Coats.SelectMany(c => c.Kits).Select(k => k.SizeMl));
        foreach (var (material, supply) in whole.Materials.Coats.Zip(whole.Supply.Coats))
        {
            table.Row(
                $"{table.Rows.Count + 1}", amount(material.NetMl), amount(material.LossMl), amount(material.NeedMl), v.Volume(material.ThinnerMl),
                string.Join(" + ", supply.Kits.Select(k => $"{k.Count} × {kit(k.SizeMl)}")), Money(supply.CostTotal, v));
        }

        terminal.Tables().Write(table);
        for (var i = 0; i < whole.Materials.Coats.Count; i++)
        {
            terminal.Line($"{i + 1}  {whole.Materials.Coats[i].Coat.Title(v)}");
            if (whole.Materials.Coats[i].Voc is { } voc)
                terminal.Line(v.Say($"  VOC as applied {v.VocOfRules(voc.ActualGPerL)}; less water and exempt {v.VocOfRules(voc.LessWaterGPerL)}", $"  COV tal como se aplica {v.VocOfRules(voc.ActualGPerL)}; sin agua ni exentos {v.VocOfRules(voc.LessWaterGPerL)}"), 4);
            foreach (var reason in whole.Materials.Coats[i].Reasons.Concat(whole.Supply.Coats[i].Reasons)) terminal.Reason(reason, v);
        }

        terminal.Cautions(whole.Job, v);
    }

    private static string Money(decimal amount, Voice v) => v.Number((double)amount) is var text && amount != Math.Floor(amount)
        ? amount.ToString("0.00", CultureInfo.InvariantCulture).Replace('.', v.Say(".", ",")[0])
        : text;
}
