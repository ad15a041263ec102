using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Supply.Picking;
using Lapwise.Documents.Parts;

namespace Lapwise.Documents;

/// <summary>What can be put on paper beside the job sheet and the quote.</summary>
public enum PaperKind
{
    /// <summary>Batch tickets, each with its code.</summary>
    Tickets,
    /// <summary>What to buy and what to load.</summary>
    Packing,
    /// <summary>The days, for the customer.</summary>
    Days,
    /// <summary>How the finished tops are cared for.</summary>
    Care,
    /// <summary>All of them, for the day.</summary>
    Packet,
}

/// <summary>Where a ticket's code leads, what the shelf gives for its batches, and who hands the papers to whom.</summary>
/// <param name="StepAddress">Address of a batch of a coat (from 0) on the phone; null: tickets carry no code.</param>
/// <param name="Picks">Which lot goes to which batch; empty: the shelf is not known.</param>
/// <param name="GivenBy">As the shop's rates name it; null or blank: not named.</param>
/// <param name="Customer">Null or blank: not named.</param>
public sealed record PaperBasis(Func<int, string, string>? StepAddress, IReadOnlyList<CoatPick> Picks, string? GivenBy = null, string? Customer = null)
{
    public static readonly PaperBasis None = new(null, []);
}

/// <summary>The papers of a job, in the look of the job sheet.</summary>
public static class Papers
{
    /// <param name="made">The date written into the file; left out, the earliest a PDF can name.</param>
    public static byte[] Pdf(PaperKind kind, WholeJob whole, Voice voice, PaperBasis basis, DateTimeOffset? made = null) =>
        PdfWriting.Write(Compose(kind, whole, voice, basis), made ?? DateTimeOffset.UnixEpoch);

    public static string Html(PaperKind kind, WholeJob whole, Voice voice, PaperBasis basis) => HtmlWriting.Write(Compose(kind, whole, voice, basis));

    private static Document Compose(PaperKind kind, WholeJob whole, Voice voice, PaperBasis basis)
    {
        var paper = voice.Units == UnitSystem.Us ? Paper.Letter : Paper.A4;
        var name = Name(kind, voice);
        return new Document($"{name}: {whole.Job.Name}", voice.Say("en", "es"), paper, $"{name}: {whole.Job.Name}", [new Block.Title(whole.Job.Name, name), .. Blocks(kind, whole, voice, basis, paper)]);
    }

    public static string Name(PaperKind kind, Voice voice) => kind switch
    {
        PaperKind.Tickets => voice.Say("Batch tickets", "Boletas de mezcla"),
        PaperKind.Packing => voice.Say("To buy and to pack", "Comprar y cargar"),
        PaperKind.Days => voice.Say("Days for the customer", "Días para el cliente"),
        PaperKind.Care => voice.Say("Care sheet", "Hoja de cuidados"),
        PaperKind.Packet => voice.Say("Everything for the day", "Todo para el día"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    private static IEnumerable<Block> Blocks(PaperKind kind, WholeJob whole, Voice voice, PaperBasis basis, Paper paper) => kind switch
    {
        PaperKind.Tickets => Tickets(whole, voice, basis),
        PaperKind.Packing => LoadingPart.Blocks(whole, voice, basis),
        PaperKind.Days => [.. Parties(basis, voice), .. DaysPart.Blocks(whole, voice, paper)],
        PaperKind.Care => [.. Parties(basis, voice), .. CarePart.Blocks(whole, voice)],
        _ => [.. HeadPart.Warning(whole, voice), .. LoadingPart.Blocks(whole, voice, basis), .. Coats(whole, voice, paper), .. Tickets(whole, voice, basis), .. DaysPart.Blocks(whole, voice, paper, ownPage: true), .. CarePart.Blocks(whole, voice, ownPage: true)],
    };

    private static IEnumerable<Block> Coats(WholeJob whole, Voice voice, Paper paper) =>
        Enumerable.Range(0, whole.Work.Coats.Count).SelectMany(coat => CoatPart.Blocks(whole, coat, voice, paper));

    private static IEnumerable<Block> Parties(PaperBasis basis, Voice voice) => PartiesPart.Blocks(basis.GivenBy, basis.Customer, voice);

    private static IEnumerable<Block> Tickets(WholeJob whole, Voice voice, PaperBasis basis)
    {
        yield return new Block.Heading(1, Name(PaperKind.Tickets, voice));
        if (HeadPart.Failing(whole, voice) is { } failing)
            yield return new Block.Verdict(Tone.DoesNotWork, voice.Say($"This plan does not work: {failing}. Do not mix by the tickets that say so.", $"Este plan no funciona: {failing}. No mezcle según las boletas que lo dicen."));
        yield return new Block.Paragraph(Say.Clock(voice));
        if (basis.StepAddress is null)
            yield return new Block.Paragraph(voice.Say("No codes on these tickets: phones are not let in yet. Let them in on the page for phones, then print again.", "Estas boletas no llevan código: aún no se deja entrar a los teléfonos. Déjelos entrar en la página de teléfonos e imprima de nuevo."));
        foreach (var block in Enumerable.Range(0, whole.Work.Coats.Count).SelectMany(coat => TicketsPart.Blocks(whole, coat, voice, basis))) yield return block;
        foreach (var block in CautionsPart.Blocks(whole, voice)) yield return block;
    }
}
