using System.Globalization;
using Lapwise.Core.Jobs;
using Lapwise.Core.Work;

namespace Lapwise.Core.Supply;

/// <summary>
/// A short name for what the tickets of one coat say, printed on each: whoever holds a slip sees whether it still is what the
/// plan asks for. It changes only where an amount, a time or the sections of a batch change.
/// </summary>
public static class TicketMark
{
    private const int Digits = 8;

    /// <summary>Eight hex digits; <see cref="Fingerprint.Printed"/> sets them in groups.</summary>
    public static string Of(CoatSupply supply, CoatWork work) => Fingerprint.OfText(string.Join('\n',
        supply.Tickets.Join(work.Batches, t => t.Batch, b => b.Id, Said)))[..Digits];

    private static string Said(BatchTicket ticket, Batch batch) => string.Join(';',
    [
        ticket.Batch, .. ticket.Parts.SelectMany(p => new[] { Number(p.Ml), Number(p.G) }), Number(ticket.ThinnerMl), Number(ticket.ThinnerG), Number(ticket.ThinnerWantedMl),
        Number(batch.MixStartMs), Number(batch.UseByMs), .. batch.Sections,
    ]);

    private static string Number(double value) => value.ToString("F3", CultureInfo.InvariantCulture);
}
