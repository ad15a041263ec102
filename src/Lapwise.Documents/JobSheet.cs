using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Documents.Parts;

namespace Lapwise.Documents;

/// <summary>The sheet a finisher works from: one job on paper, or as a page that prints the same.</summary>
public static class JobSheet
{
    /// <summary>A PDF with its type embedded: A4 in metric units, US Letter in US units.</summary>
    /// <param name="made">The date written into the file; left out, the file carries the earliest date a PDF can name, so that the same job is the same bytes.</param>
    public static byte[] Pdf(WholeJob whole, Voice voice, DateTimeOffset? made = null) =>
        PdfWriting.Write(Compose(whole, voice), made ?? DateTimeOffset.UnixEpoch);

    /// <summary>One page of HTML that needs nothing from elsewhere and prints like the PDF.</summary>
    public static string Html(WholeJob whole, Voice voice) => HtmlWriting.Write(Compose(whole, voice));

    internal static Document Compose(WholeJob whole, Voice voice)
    {
        var paper = voice.Units == UnitSystem.Us ? Paper.Letter : Paper.A4;
        var title = voice.Say($"Job sheet: {whole.Job.Name}", $"Hoja de trabajo: {whole.Job.Name}");
        return new Document(title, voice.Say("en", "es"), paper, title,
        [
            .. HeadPart.Blocks(whole, voice),
            .. RoomPart.Blocks(whole, voice, paper),
            .. CautionsPart.Blocks(whole, voice),
            .. TopsPart.Blocks(whole, voice, paper),
            .. SectionPart.Blocks(whole, voice, paper),
            .. Enumerable.Range(0, whole.Work.Coats.Count).SelectMany(coat => Coat(whole, coat, voice, paper)),
            .. PackingPart.Blocks(whole, voice),
            .. DaysPart.Blocks(whole, voice, paper),
            .. BasesPart.Blocks(whole, voice),
        ]);
    }

    private static IEnumerable<Block> Coat(WholeJob whole, int coat, Voice voice, Paper paper) =>
        [.. CoatPart.Blocks(whole, coat, voice, paper), new Block.Heading(2, Papers.Name(PaperKind.Tickets, voice)), .. TicketsPart.Blocks(whole, coat, voice)];
}
