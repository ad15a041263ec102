using System.Globalization;
using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply.Buying;
using Lapwise.Files;

namespace Lapwise.Cli.Commands;

/// <summary>The cheapest kits for several jobs together, after what is on the shelf.</summary>
internal static class BuyCommand
{
    public static readonly Command Command = new("buy", ["JOB", "JOB…"], [Phases.Supply],
        v => v.Say("the cheapest kits for all jobs named, together", "los juegos más baratos para todos los trabajos nombrados"),
        v => v.Say("Kits for all jobs at once, so that none runs short with the chance asked for (--chance 95 %). --shelf names the log of what is on the shelf: first expired goes first, and an expired lot is never counted. Each coat is of the day its timeline gives it. --rates names the shop's rates, for the currency of prices that name none.",
            "Juegos para todos los trabajos a la vez, sin quedarse corto con la probabilidad pedida (--chance 95 %). --shelf indica el registro del estante: lo que antes caduca sale antes, y un lote caducado no cuenta. Cada capa es del día que le da su calendario. --rates indica las tarifas del taller, por la moneda de los precios que no dicen ninguna."),
        Run)
    { LastRepeats = true };

    private static Outcome Run(Request request, Terminal terminal)
    {
        var (needs, library, voice) = (new List<ComingNeed>(), new List<ProductDocument>(), request.Voice);
        foreach (var file in request.Files)
        {
            if (JobInput.Read(request with { Files = [file] }, terminal) is not { } input) return BadInput(file, request, terminal);
            voice = input.Voice;
            if (input.Work(terminal) is not { } whole) return BadInput(file, request, terminal);
            library.AddRange((input.Document.Products ?? []).Concat(input.Products));
            needs.AddRange(Purchasing.NeedsOf(whole.Job, whole.Materials, whole.Supply, whole.Timeline.CoatedOn, AgreementReading.Board(input.Document)));
        }

        if (Chance(request) is not { } chance)
        {
            return Faults.Print([new Fault("--chance", "ChanceOutOfRange",
                v => v.Say($"\"{request.Chance}\" is no chance that can be asked for.", $"«{request.Chance}» no es una probabilidad que se pueda pedir."),
                v => v.Say("Give 50 % to 99.9 %.", "Dé de 50 % a 99,9 %."))], voice, terminal);
        }

        var products = JobReading.ReadProducts(new JobDocument(), library);
        var shelf = new Shelf([], []);
        if (request.Shelf is { } path)
        {
            var read = DocumentFile.ReadShelf(path, terminal.In);
            if (read.Document is not { } document) return Faults.Print(read.Faults, voice, terminal);
            var folded = ShelfReading.Read(document, products, voice.Units);
            if (folded.Faults.Count > 0) return Faults.Print(read.WithLines(folded.Faults), voice, terminal);
            shelf = folded.Shelf;
        }

        if (RatesInput.Read(request, terminal, voice) is not { } rates) return Outcome.BadInput;
        var charged = RatesReading.Read(rates, voice.Units);
        if (charged.Rates is not { } own) return Faults.Print(charged.Faults, voice, terminal);
        var purchase = Purchasing.Purchase(needs, shelf, products, own.Currency, chance);
        if (request.Json) terminal.Json(MoneyAnswering.Purchase(purchase, voice), AnswerJson.Default.PurchaseAnswer);
        else Print(purchase, voice, terminal);
        return Outcome.Done;
    }

    /// <summary>Of several files, the one that the faults just printed are in.</summary>
    private static Outcome BadInput(string file, Request request, Terminal terminal)
    {
        if (request.Files.Count > 1) terminal.Error.WriteLine(Screen.OneLine(request.Voice.Say($"All of this is in {file}.", $"Todo esto está en {file}.")));
        return Outcome.BadInput;
    }

    /// <summary>A share as <c>0.95</c>, or per cent as <c>95</c> or <c>95 %</c>.</summary>
    private static double? Chance(Request request)
    {
        if (request.Chance is not { } said) return Purchasing.UsualChance;
        if (!double.TryParse(said.Trim().TrimEnd('%').Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value)) return null;
        var share = value > 1 ? value / 100 : value;
        return share is >= Purchasing.LeastChance and <= Purchasing.MostChance ? share : null;
    }

    private static void Print(Purchase purchase, Voice v, Terminal terminal)
    {
        var table = Screen.Table(
            new Column.Text(v.Say("Coating", "Recubrimiento")), new Column.Number(v.Say("Need", "Necesidad")), new Column.Number(v.Say("Shelf", "Estante")),
            new Column.Word(v.Say("Buy", "Comprar")), new Column.Number(v.Say("Cost", "Coste")), new Column.Number(v.Say("Enough", "Alcanza")));
        var amount = v.Volumes(purchase.Shades.SelectMany(s => new[] { s.NeedMl, s.FromShelfMl }));
        var kit = v.Volumes(purchase.Shades.SelectMany(s => s.Kits).Select(k => k.SizeMl));
        foreach (var s in purchase.Shades)
        {
            table.Row(
                s.Shade.Color.Length > 0 ? $"{s.Product.Name} ({s.Shade.Color})" : s.Product.Name, amount(s.NeedMl), amount(s.FromShelfMl),
                s.Kits.Count == 0 ? "–" : string.Join('\n', s.Kits.Select(k => $"{k.Count} × {kit(k.SizeMl)}")), v.Money(s.Cost), Core.Work.Risk.Chance.Said(s.Enough.Share, v));
        }

        terminal.Tables().Write(table);
        foreach (var shade in purchase.Shades)
        {
            if (shade.Needs.Count > 1 && shade.CostJobByJob > shade.Cost)
                terminal.Line(v.Say($"{shade.Product.Name}: bought for each job alone it would cost {v.Money(shade.CostJobByJob)}.", $"{shade.Product.Name}: comprado para cada trabajo por separado costaría {v.Money(shade.CostJobByJob)}."));
            foreach (var reason in shade.Reasons) terminal.Reason(reason, v);
        }

        if (purchase.BesideKits.Count > 0)
        {
            var liquid = v.Volumes(purchase.BesideKits.Select(l => l.NeedMl));
            terminal.Line(v.Say("Beside the kits: ", "Aparte de los juegos: ") + string.Join("; ", purchase.BesideKits.Select(l => $"{BuyingWords.Of(l.Use, l.Name(v), v)}, {liquid(l.NeedMl)}")) + ".");
            terminal.Line(BuyingWords.OfLiquids(purchase.BesideKits.Any(l => l.MayBurn), v));
        }

        foreach (var held in purchase.HeldBack) terminal.Reason(held.Reason, v);
        terminal.Line(BuyingWords.HowSure(purchase.ChanceAsked, v));
    }
}
