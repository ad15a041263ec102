using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Supply.Picking;

/// <summary>Which pack a batch is measured from.</summary>
public sealed record PickedPack(Pack Pack, double Ml);

/// <summary>One batch and the packs it is measured from, in the order they are used up.</summary>
/// <param name="MissingMl">What no pack on the shelf gives; 0: all of it is there.</param>
public sealed record BatchPick(string Batch, IReadOnlyList<PickedPack> Packs, double MissingMl);

/// <summary>The batches of one coat.</summary>
public sealed record CoatPick(int Coat, Shade Shade, IReadOnlyList<BatchPick> Batches, IReadOnlyList<Reason> Reasons);

/// <summary>Which lot goes to which batch: first expired first, one colour boxed, an expired lot never.</summary>
public static class LotPicking
{
    // Less than this is no shortage but the dust of binary fractions.
    private const double DustMl = 0.001;

    /// <param name="onDay">The day a coat, from 0, goes on; what is expired by then is left standing.</param>
    public static IReadOnlyList<CoatPick> Pick(JobSupply supply, Shelf shelf, Func<int, DateOnly> onDay)
    {
        var left = shelf.Packs.OrderBy(p => p.Expires ?? DateOnly.MaxValue).ThenBy(p => p.Opened ?? DateOnly.MaxValue).ThenBy(p => p.Id, StringComparer.Ordinal).ToList();
        var picks = new List<CoatPick>();
        for (var i = 0; i < supply.Coats.Count; i++)
        {
            var (coat, on) = (supply.Coats[i], onDay(i));
            var shade = Shade.Of(coat.Coat.Product.Id, coat.Coat.Color);
            var batches = coat.Tickets.Select(t => PickOne(t, shade, left, on)).ToList();
            picks.Add(new CoatPick(i, shade, batches, [.. Reasons(shade, batches, left, on)]));
        }

        return picks;
    }

    private static BatchPick PickOne(BatchTicket ticket, Shade shade, List<Pack> left, DateOnly on)
    {
        var (missing, picked) = (ticket.VolumeMl, new List<PickedPack>());
        for (var p = 0; p < left.Count && missing > DustMl; p++)
        {
            if (!left[p].Shade.Equals(shade) || left[p].IsExpired(on) || left[p].UsableMl <= DustMl) continue;
            var ml = Math.Min(missing, left[p].UsableMl);
            picked.Add(new PickedPack(left[p], ml));
            (left[p], missing) = (left[p].Less(ml), missing - ml);
        }

        return new BatchPick(ticket.Batch, picked, missing > DustMl ? missing : 0);
    }

    private static IEnumerable<Reason> Reasons(Shade shade, IReadOnlyList<BatchPick> batches, IReadOnlyList<Pack> left, DateOnly on)
    {
        if (batches.Sum(b => b.MissingMl) is > 0 and var missing)
        {
            yield return new Reason("ShelfRunsShort", Limit.Note,
                v => v.Say($"The shelf is {v.Volume(missing)} short for this coat.", $"En el estante faltan {v.Volume(missing)} para esta capa."),
                v => v.Say("Buy it before the day.", "Cómprelo antes del día."));
        }

        foreach (var pack in left.Where(p => p.Shade.Equals(shade) && p.IsExpired(on) && p.UsableMl > DustMl))
        {
            yield return new Reason("LotExpired", Limit.AtYourWord,
                v => v.Say($"Pack {pack.Id}, lot {pack.Lot}, expired on {v.Date(pack.Expires!.Value)} and is given to no batch on {v.Date(on)}.", $"El envase {pack.Id}, lote {pack.Lot}, caducó el {v.Date(pack.Expires!.Value)} y no se da a ninguna mezcla del {v.Date(on)}."),
                v => v.Say("Write it off, or enter the new date the maker gave you in writing.", "Delo de baja, o anote la nueva fecha que el fabricante le dio por escrito."));
        }

        var lots = batches.SelectMany(b => b.Packs).Select(p => p.Pack.Lot).Distinct(StringComparer.Ordinal).ToList();
        if (lots.Count < 2) yield break;
        var names = string.Join(", ", lots.Select(l => l.Length > 0 ? l : "?"));
        yield return shade.Color.Length > 0
            ? new Reason("BoxTheColour", Limit.Note,
                v => v.Say($"This colour comes from lots {names}: the shade may step from one to the next.", $"Este color viene de los lotes {names}: el tono puede dar un salto de uno a otro."),
                v => v.Say("Pour their A together and stir before the first batch.", "Junte sus A y remueva antes de la primera mezcla."))
            : new Reason("LotsMeet", Limit.Note,
                v => v.Say($"This coat takes from lots {names}.", $"Esta capa toma de los lotes {names}."),
                v => v.Say("Use the A of a lot with the B of the same lot, and note both on the ticket.", "Use el A de un lote con el B del mismo lote, y anote ambos en la boleta."));
    }
}
