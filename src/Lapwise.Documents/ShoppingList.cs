using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Supply.Buying;
using Lapwise.Core.Work.Risk;
using Lapwise.Documents.Parts;

namespace Lapwise.Documents;

/// <summary>What a shopping list is made from.</summary>
/// <param name="Levels">How much is there of every coating and colour that stands on the shelf, is to be kept or is asked for.</param>
/// <param name="Products">Name what the levels are of.</param>
/// <param name="On">The day it is made for: what has expired by then does not count.</param>
public sealed record ShoppingBasis(Purchase Purchase, IReadOnlyList<StockLevel> Levels, IReadOnlyList<Product> Products, DateOnly On)
{
    /// <summary>Jobs of which something entered cannot be used yet, by name: what they take may be missing.</summary>
    public IReadOnlyList<string> Incomplete { get; init; } = [];

    /// <summary>What else of the jobs is worth knowing.</summary>
    public IReadOnlyList<Reason> Notes { get; init; } = [];
}

/// <summary>What to buy for all coming jobs at one time: to tick off in the shop, with what it is for.</summary>
public static class ShoppingList
{
    /// <summary>Coats that the list says what it is for, the next to come; more fill pages that nobody takes to a shop.</summary>
    private const int MostNamed = 200;

    /// <param name="made">The date written into the file; left out, the earliest a PDF can name.</param>
    public static byte[] Pdf(ShoppingBasis basis, Voice voice, DateTimeOffset? made = null) => PdfWriting.Write(Compose(basis, voice), made ?? DateTimeOffset.UnixEpoch);

    public static string Html(ShoppingBasis basis, Voice voice) => HtmlWriting.Write(Compose(basis, voice));

    public static string Name(Voice voice) => voice.Say("Shopping list", "Lista de compra");

    private static Document Compose(ShoppingBasis basis, Voice voice)
    {
        var title = $"{Name(voice)}, {voice.Date(basis.On)}";
        return new Document(title, voice.Say("en", "es"), voice.Units == UnitSystem.Us ? Paper.Letter : Paper.A4, title,
        [
            new Block.Title(Name(voice), voice.Say($"For all coming jobs, as of {voice.Date(basis.On)}.", $"Para todos los trabajos que vienen, al {voice.Date(basis.On)}.")),
            .. Missing(basis, voice),
            .. ToBuy(basis, voice),
            .. BesideKits(basis.Purchase, voice),
            .. HeldBack(basis.Purchase, voice),
            .. BelowLeast(basis, voice),
            .. For(basis.Purchase, voice),
        ]);
    }

    private static IEnumerable<Block> Missing(ShoppingBasis basis, Voice voice)
    {
        if (basis.Incomplete.Count == 0) yield break;
        yield return new Block.Verdict(Tone.Narrow, voice.Say("This list may be too short.", "Esta lista puede quedarse corta."));
        yield return new Block.Items([new Item(ItemMark.Caution, voice.Say(
            $"{voice.Some(basis.Incomplete)}: something entered cannot be used yet, so what the job takes may be missing here. Open the job, put right what is marked, and print again.",
            $"{voice.Some(basis.Incomplete)}: algo de lo anotado aún no se puede usar, así que puede faltar aquí lo que lleva el trabajo. Abra el trabajo, corrija lo marcado e imprima de nuevo."))]);
    }

    private static IEnumerable<Block> ToBuy(ShoppingBasis basis, Voice voice)
    {
        var purchase = basis.Purchase;
        yield return new Block.Heading(1, voice.Say("To buy", "Por comprar"));
        if (purchase.Shades.All(s => s.Kits.Count == 0))
            yield return new Block.Paragraph(purchase.Shades.Count == 0
                ? voice.Say("No coming job needs a coating that may be bought yet.", "Ningún trabajo que viene necesita un recubrimiento que ya se pueda comprar.")
                : voice.Say("Nothing that is sold in kits known here.", "Nada que se venda en juegos conocidos aquí."));
        if (basis.Notes.Count > 0) yield return new Block.Items([.. basis.Notes.Select(r => Say.Reason(r, voice))]);
        if (purchase.Shades.Count == 0) yield break;

        var kit = voice.Volumes(purchase.Shades.SelectMany(s => s.Kits).Select(k => k.SizeMl));
        yield return new Block.Items([.. purchase.Shades.SelectMany(s => s.Kits.Select(k => new Item(ItemMark.Tick, $"{k.Count} × {kit(k.SizeMl)}: {Of(s.Product, s.Shade)}")))]);
        var amount = voice.Volumes(purchase.Shades.SelectMany(s => new[] { s.NeedMl, s.FromShelfMl, s.BuyAtLeastMl }));
        yield return new Block.Table(
            [
                new(voice.Say("coating", "recubrimiento"), 3), new(voice.Say("needed", "necesario"), 1.4, Right: true), new(voice.Say("from the shelf", "del estante"), 1.4, Right: true),
                new(voice.Say("to buy at least", "comprar al menos"), 1.5, Right: true), new(voice.Say("cost", "coste"), 1.6, Right: true), new(voice.Say("enough with", "alcanza con"), 1.4, Right: true),
            ],
            [
                .. purchase.Shades.Select(s => new Row(
                    [Of(s.Product, s.Shade), amount(s.NeedMl), amount(s.FromShelfMl), amount(s.BuyAtLeastMl), voice.Money(s.Cost), Chance.Said(s.Enough.Share, voice)])),
                .. purchase.Shades.Count > 1 && purchase.Cost is { } cost ? [new Row([voice.Say("all", "todo"), "", "", "", voice.Money(cost), ""], Strong: true)] : Array.Empty<Row>(),
            ]);
        var reasons = purchase.Shades.SelectMany(s => s.Reasons).Select(r => Say.Reason(r, voice)).Distinct().ToList();
        if (reasons.Count > 0) yield return new Block.Items(reasons);
        yield return new Block.Paragraph(BuyingWords.HowSure(purchase.ChanceAsked, voice));
    }

    private static IEnumerable<Block> BesideKits(Purchase purchase, Voice voice)
    {
        if (purchase.BesideKits.Count == 0) yield break;
        var amount = voice.Volumes(purchase.BesideKits.Select(l => l.NeedMl));
        yield return new Block.Heading(1, voice.Say("Beside the kits", "Aparte de los juegos"));
        yield return new Block.Items([.. purchase.BesideKits.Select(l => new Item(ItemMark.Tick, $"{BuyingWords.Of(l.Use, l.Name(voice), voice)}: {amount(l.NeedMl)}"))]);
        yield return new Block.Paragraph(BuyingWords.OfLiquids(purchase.BesideKits.Any(l => l.MayBurn), voice));
    }

    private static IEnumerable<Block> HeldBack(Purchase purchase, Voice voice)
    {
        if (purchase.HeldBack.Count == 0) yield break;
        yield return new Block.Heading(1, voice.Say("Not to buy yet", "Aún sin comprar"));
        yield return new Block.Items([.. purchase.HeldBack.Select(h => Say.Reason(h.Reason, voice))]);
    }

    /// <summary>What the shop wants to keep is bought when the finisher says so; here it is only said.</summary>
    private static IEnumerable<Block> BelowLeast(ShoppingBasis basis, Voice voice)
    {
        var low = basis.Levels.Where(l => l.UsableMl < l.KeepMl).Select(l => (Name: Name(basis, l.Shade), Level: l)).OrderBy(l => l.Name, StringComparer.Ordinal).ToList();
        if (low.Count == 0) yield break;
        var amount = voice.Volumes(low.SelectMany(l => new[] { l.Level.UsableMl, l.Level.KeepMl }));
        yield return new Block.Heading(1, voice.Say("Below the least to keep", "Por debajo del mínimo"));
        yield return new Block.Items([.. low.Select(l => new Item(ItemMark.Tick, voice.Say(
            $"{l.Name}: {amount(l.Level.UsableMl)} there, at least {amount(l.Level.KeepMl)} to keep",
            $"{l.Name}: hay {amount(l.Level.UsableMl)}, se guardan al menos {amount(l.Level.KeepMl)}")))]);
    }

    private static IEnumerable<Block> For(Purchase purchase, Voice voice)
    {
        var needs = purchase.Shades.SelectMany(s => s.Needs.Select(n => (Of: Of(s.Product, s.Shade), Need: n))).ToList();
        if (needs.Count == 0) yield break;
        var amount = voice.Volumes(needs.Select(n => n.Need.NeedMl));
        yield return new Block.Heading(1, voice.Say("What it is for", "Para qué es"));
        yield return new Block.Table(
            [new(voice.Say("job", "trabajo"), 3), new(voice.Say("coating", "recubrimiento"), 3), new(voice.Say("coated on", "se aplica el"), 1.7), new(voice.Say("needed", "necesario"), 1.3, Right: true)],
            [.. needs.OrderBy(n => n.Need.On ?? DateOnly.MaxValue).ThenBy(n => n.Need.Job, StringComparer.Ordinal).Take(MostNamed)
                .Select(n => new Row([n.Need.Job, n.Of, n.Need.On is { } on ? voice.Date(on) : voice.Say("not set", "sin fecha"), amount(n.Need.NeedMl)]))]);
        if (needs.Count > MostNamed) yield return new Block.Paragraph(voice.Say($"And {needs.Count - MostNamed} more coats, counted above.", $"Y {needs.Count - MostNamed} capas más, contadas arriba."));
    }

    private static string Of(Product product, Shade shade) => Coat.Named(product.Name, shade.Color);

    private static string Name(ShoppingBasis basis, Shade shade) =>
        basis.Products.FirstOrDefault(p => p.Id == shade.Product) is { } product ? Of(product, shade) : shade.Color.Length > 0 ? $"{shade.Product} ({shade.Color})" : shade.Product;
}
