using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Files;

namespace Lapwise.Cli.Commands;

/// <summary>What to charge, and whether it pays.</summary>
internal static class PriceCommand
{
    public static readonly Command Command = JobCommand.WithProducts("price", [Phases.Money],
        v => v.Say("what to charge, and whether it pays", "cuánto cobrar, y si sale a cuenta"),
        v => v.Say("Labour by the steps of the timeline, material by the kits, then overhead, the rework to be expected, margin, tax and stages. --rates names the shop's rates; left out, rates.yaml beside the job, or this program's own figures, which are said to be such. Ends with 1 where the price is under the floor.",
            "Mano de obra por los pasos del calendario, material por los juegos, y después gastos generales, retrabajo esperado, margen, impuesto y pagos. --rates indica las tarifas del taller; sin ella, rates.yaml junto al trabajo, o las cifras de este programa, que se dicen como tales. Termina con 1 si el precio queda bajo el mínimo."),
        Run);

    private static Outcome Run(WholeJob whole, JobInput input, Request request, Terminal terminal)
    {
        var v = input.Voice;
        if (RatesInput.Read(request, terminal, v) is not { } rates) return Outcome.BadInput;
        var (priced, faults) = WholePrice.Of(input.Document, whole, input.Products, rates, WholePrice.ChancesOf(whole));
        if (priced is null) return Faults.Print(input.WithLines(faults), v, terminal);

        if (request.Json) terminal.Json(MoneyAnswering.Price(priced, v), AnswerJson.Default.PriceAnswer);
        else Print(priced, v, terminal);
        return priced.Price.Net >= priced.Price.Floor ? Outcome.Done : Outcome.DoesNotWork;
    }

    private static void Print(WholePrice priced, Voice v, Terminal terminal)
    {
        var price = priced.Price;
        var costs = Screen.Table(new Column.Text(v.Say("Costs you", "Le cuesta")), new Column.Number(price.Rates.Currency.Code));
        foreach (var kind in price.Lines.Select(l => l.Kind).Distinct()) costs.Row(MoneyWords.Of(kind, v), v.BareMoney(price.CostOf(kind)));
        costs.Row(v.Say("Overhead", "Gastos generales"), v.BareMoney(price.Overhead));
        costs.Row(v.Say("Rework to be expected", "Retrabajo que cabe esperar"), v.BareMoney(price.Rework.Sum));
        costs.Row(v.Say("Floor: under it the job loses money", "Mínimo: por debajo se pierde dinero"), v.BareMoney(price.Floor));
        terminal.Tables().Write(costs);

        var quoted = Screen.Table(new Column.Text(v.Say("You charge", "Usted cobra")), new Column.Number(price.Rates.Currency.Code));
        foreach (var line in price.Quoted) quoted.Row(line.Name(v), v.BareMoney(line.Amount));
        quoted.Row(v.Say("Before tax", "Sin impuesto"), v.BareMoney(price.Net));
        quoted.Row(v.Say("Tax", "Impuesto"), v.BareMoney(price.Tax));
        quoted.Row(v.Say("Total", "Total"), v.BareMoney(price.Total));
        foreach (var stage in price.Stages) quoted.Row("  " + stage.Name(v), v.BareMoney(stage.Total));
        foreach (var option in priced.Options) quoted.Row(v.Say($"Option: {option.Option.Name}", $"Opción: {option.Option.Name}"), (option.Difference.Value >= 0 ? "+" : "") + v.BareMoney(option.Difference));
        terminal.Tables().Write(quoted);

        terminal.Line(v.Say($"Margin {v.Percent((double)price.Margin, 1)} of the price; that is a markup of {v.Percent((double)price.Markup, 1)} on the cost.",
            $"Margen {v.Percent((double)price.Margin, 1)} del precio; es un recargo de {v.Percent((double)price.Markup, 1)} sobre el coste."));
        foreach (var reason in price.Reasons.Concat(priced.Terms.Open).DistinctBy(r => (r.Code, r.Text(v)))) terminal.Reason(reason, v);
        foreach (var line in priced.Terms.Home) terminal.Line("· " + line(v), 2);
    }
}
