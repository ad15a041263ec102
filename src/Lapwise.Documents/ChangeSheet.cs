using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Documents.Parts;

namespace Lapwise.Documents;

/// <summary>What was added to the job since it was sold, each with its price, the new total and a line to sign on.</summary>
public static class ChangeSheet
{
    /// <param name="on">The day it is made for.</param>
    /// <param name="made">The date written into the file; left out, the earliest a PDF can name.</param>
    public static byte[] Pdf(WholePrice priced, DateOnly on, Voice voice, DateTimeOffset? made = null) => PdfWriting.Write(Compose(priced, on, voice), made ?? DateTimeOffset.UnixEpoch);

    public static string Html(WholePrice priced, DateOnly on, Voice voice) => HtmlWriting.Write(Compose(priced, on, voice));

    public static string Name(Voice voice) => voice.Say("Changes to sign", "Cambios por firmar");

    private static Document Compose(WholePrice priced, DateOnly on, Voice voice)
    {
        var job = priced.Whole.Job.Name;
        var title = $"{Name(voice)}: {job}";
        return new Document(title, voice.Say("en", "es"), voice.Units == UnitSystem.Us ? Paper.Letter : Paper.A4, title, [.. Blocks(priced, on, voice, job)]);
    }

    private static IEnumerable<Block> Blocks(WholePrice priced, DateOnly on, Voice voice, string job)
    {
        yield return new Block.Title(job, $"{Name(voice)}, {voice.Date(on)}");
        foreach (var party in PartiesPart.Blocks(priced.Rates.GivenBy, priced.Agreement.Customer, voice)) yield return party;
        var changes = priced.Agreement.Changes;
        if (changes.All(c => c.SignedOn is not null))
        {
            yield return new Block.Paragraph(changes.Count == 0
                ? voice.Say("No change is noted for this job.", "No hay ningún cambio anotado para este trabajo.")
                : voice.Say("Every change is signed.", "Todos los cambios están firmados."));
        }

        if (changes.Count == 0) yield break;
        var currency = priced.Rates.Currency;
        yield return new Block.Table(
            [
                new(voice.Say("change", "cambio"), 4), new(voice.Say($"price before tax, {currency}", $"precio sin impuesto, {currency}"), 1.6, Right: true),
                new(voice.Say($"total up to here, with tax, {currency}", $"total hasta aquí, con impuesto, {currency}"), 1.8, Right: true), new(voice.Say("signed", "firmado"), 1.6),
            ],
            [
                .. changes.Select((c, i) => new Row(
                [
                    c.What, voice.BareMoney(c.Price), priced.WithChanges(i + 1) is { } with ? voice.BareMoney(with.Total) : "–",
                    c.SignedOn is { } signed ? voice.Date(signed) : "________",
                ])),
            ]);
        yield return new Block.Paragraph(voice.Say("A change is done once it is signed. It may move days already promised; the days are told anew then.",
            "Un cambio se hace cuando está firmado. Puede mover días ya prometidos; los días se comunican entonces de nuevo."));
        if (changes.Any(c => c.SignedOn is null)) yield return new Block.Signatures([voice.Say("customer, date", "cliente, fecha"), voice.Say("finisher, date", "quien aplica, fecha")]);
    }
}
