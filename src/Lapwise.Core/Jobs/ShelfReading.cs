using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What reading a shelf gave; an entry with a fault changes nothing and stays in the log.</summary>
public sealed record ShelfRead(Shelf Shelf, IReadOnlyList<Fault> Faults);

/// <summary>Folds the log of the shelf into what stands on it.</summary>
public static class ShelfReading
{
    /// <summary>More entries than a shop writes in a lifetime.</summary>
    public const int MostEntries = 200_000;

    /// <summary>A slip of the pen beyond this.</summary>
    public const int MostPacks = 500;

    // What cup and scale cannot show is not left on a shelf.
    private const double DustMl = 0.01;

    /// <param name="products">Known products; they say how a pack divides into its parts.</param>
    /// <param name="units">What a bare number means.</param>
    public static ShelfRead Read(ShelfDocument document, IReadOnlyList<Product> products, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (DocumentVersion.Refuse("lapwise", document.Lapwise, ShelfDocument.CurrentVersion) is { } refused) return new ShelfRead(new Shelf([], []), [refused]);

        var fold = new Fold(new Fields(units), products.DistinctBy(p => p.Id, StringComparer.Ordinal).ToDictionary(p => p.Id, StringComparer.Ordinal));
        foreach (var (entry, path) in fold.Fields.Items("entries", document.Entries, MostEntries)) fold.Take(entry, path);
        var keeps = new List<Keep>();
        foreach (var (keep, path) in fold.Fields.Items("keep", document.Keep, MostPacks))
        {
            var before = fold.Fields.Count;
            var least = fold.Fields.Volume(path + ".least", keep.Least, Ranges.KitVolume);
            if (fold.Fields.Count == before) keeps.Add(new Keep(Shade.Of(keep.Product, keep.Color), least));
        }

        return new ShelfRead(new Shelf(fold.Standing(), keeps), fold.Fields.Faults);
    }

    private sealed class Fold(Fields fields, Dictionary<string, Product> products)
    {
        private readonly Dictionary<string, Pack> _packs = new(StringComparer.Ordinal);
        private readonly HashSet<string> _seen = new(StringComparer.Ordinal);

        public Fields Fields => fields;

        public IReadOnlyList<Pack> Standing() =>
        [
            .. _packs.Values.Where(p => p.Parts.Any(x => x.LeftMl > DustMl)).OrderBy(p => p.Expires ?? DateOnly.MaxValue).ThenBy(p => p.Opened ?? DateOnly.MaxValue).ThenBy(p => p.Id, StringComparer.Ordinal),
        ];

        public void Take(ShelfEntryDocument entry, string path)
        {
            var before = fields.Count;
            if (entry.Id.Length == 0)
            {
                fields.Add(path + ".id", "IdMissing", v => v.Say("The entry has no id.", "El apunte no tiene id."), v => v.Say("Give each entry an id of its own.", "Dé a cada apunte un id propio."));
                return;
            }

            if (!_seen.Add(entry.Id)) return; // sent twice, counted once
            var on = fields.Day(path + ".on", entry.On);
            if (entry.Kind == ShelfEntryKind.Received)
            {
                Receive(entry, path, before);
                return;
            }

            if (!_packs.TryGetValue(entry.Pack, out var pack))
            {
                fields.Add(path + ".pack", "PackUnknown",
                    v => v.Say($"No pack {Misreads.Quote(v, entry.Pack)} was received before this.", $"No se recibió antes ningún envase {Misreads.Quote(v, entry.Pack)}."),
                    v => v.Say("Name one that stands on the shelf, or enter its receipt first.", "Nombre uno que esté en el estante, o anote antes su entrada."));
                return;
            }

            var after = entry.Kind switch
            {
                ShelfEntryKind.Opened => pack with { Opened = on, Expires = Earlier(pack.Expires, entry.Expires is null ? null : fields.Day(path + ".expires", entry.Expires)) },
                ShelfEntryKind.Taken => Taken(entry, path, pack, on),
                ShelfEntryKind.Counted => pack.With(Amounts(entry, path, pack)),
                ShelfEntryKind.Redated => pack with { Expires = Reasoned(entry, path) ? fields.Day(path + ".expires", entry.Expires) : null },
                ShelfEntryKind.WrittenOff => Reasoned(entry, path) ? pack.With([.. pack.Parts.Select(_ => 0.0)]) : pack,
                _ => throw new ArgumentOutOfRangeException(nameof(entry)),
            };
            if (fields.Count == before) _packs[entry.Pack] = after;
        }

        private void Receive(ShelfEntryDocument entry, string path, int before)
        {
            if (entry.Pack.Length == 0 || _packs.ContainsKey(entry.Pack) || _packs.ContainsKey(entry.Pack + ".1"))
            {
                fields.Add(path + ".pack", "PackNotNew",
                    v => v.Say("A receipt needs a new name for its pack.", "Una entrada necesita un nombre nuevo para su envase."),
                    v => v.Say("Give it a name that no pack has had.", "Póngale un nombre que ningún envase haya tenido."));
            }

            if (entry.Product is null || !products.TryGetValue(entry.Product, out var product))
            {
                fields.Add(path + ".product", "ProductUnknown",
                    v => v.Say($"There is no product {Misreads.Quote(v, entry.Product ?? "")}.", $"No existe el producto {Misreads.Quote(v, entry.Product ?? "")}."),
                    v => v.Say("Enter its data sheet first.", "Anote antes su ficha técnica."));
                return;
            }

            var size = fields.Volume(path + ".size", entry.Size, Ranges.KitVolume);
            var expires = string.IsNullOrWhiteSpace(entry.Expires) ? (DateOnly?)null : fields.Day(path + ".expires", entry.Expires);
            var count = entry.Count ?? 1;
            if (count is < 1 or > MostPacks)
            {
                fields.Add(path + ".count", "CountOutOfRange",
                    v => v.Say($"{count} packs at once cannot be right.", $"{count} envases de una vez no puede ser."),
                    v => v.Say($"Enter a number from 1 to {MostPacks}.", $"Escriba un número de 1 a {MostPacks}."));
            }

            if (fields.Count > before) return;
            for (var i = 1; i <= count; i++)
            {
                var id = count == 1 ? entry.Pack : $"{entry.Pack}.{i.ToString(CultureInfo.InvariantCulture)}";
                _packs[id] = new Pack(id, Shade.Of(product.Id, entry.Color), (entry.Lot ?? "").Trim(), size, expires, null, Pack.Full(product.Recipe, size));
            }
        }

        private Pack Taken(ShelfEntryDocument entry, string path, Pack pack, DateOnly on)
        {
            if (pack.IsExpired(on))
            {
                fields.Add(path, "LotExpired",
                    v => v.Say($"Pack {Misreads.Quote(v, pack.Id)}, lot {Misreads.Quote(v, pack.Lot)}, expired on {v.Date(pack.Expires!.Value)}; it was to be used on {v.Date(on)}.", $"El envase {Misreads.Quote(v, pack.Id)}, lote {Misreads.Quote(v, pack.Lot)}, caducó el {v.Date(pack.Expires!.Value)}; se iba a usar el {v.Date(on)}."),
                    v => v.Say("Write it off, or enter the new date the maker gave you in writing.", "Delo de baja, o anote la nueva fecha que el fabricante le dio por escrito."));
                return pack;
            }

            var taken = Amounts(entry, path, pack);
            foreach (var (part, ml) in pack.Parts.Zip(taken).Where(p => p.Second > p.First.LeftMl + DustMl).Take(1))
            {
                fields.Add(path, "MoreThanLeft",
                    v => v.Say($"{v.Volume(ml)} of {part.Name} is more than the {v.Volume(part.LeftMl)} left in it.", $"{v.Volume(ml)} de {part.Name} es más que los {v.Volume(part.LeftMl)} que quedan."),
                    v => v.Say("Check the amounts, or count the pack anew.", "Revise las cantidades, o vuelva a medir el envase."));
            }

            return pack.With([.. pack.Parts.Zip(taken, (part, ml) => Math.Max(0, part.LeftMl - ml))]);
        }

        /// <summary>mL of each part. A third part that is left out goes with A, as entries wrote it before it could be said.</summary>
        private double[] Amounts(ShelfEntryDocument entry, string path, Pack pack)
        {
            var a = fields.Volume(path + ".a", entry.A, Ranges.LeftInPack);
            var b = fields.Volume(path + ".b", entry.B, Ranges.LeftInPack);
            return [a, b, .. pack.Parts.Skip(2).Select(c => entry.C is null ? a * c.Share / pack.Parts[0].Share : fields.Volume(path + ".c", entry.C, Ranges.LeftInPack))];
        }

        private bool Reasoned(ShelfEntryDocument entry, string path)
        {
            if (!string.IsNullOrWhiteSpace(entry.Why)) return true;
            fields.Add(path + ".why", "ReasonMissing",
                v => v.Say("No reason is given.", "No se da el motivo."),
                v => v.Say("Say why: it stays in the log.", "Diga por qué: queda en el registro."));
            return false;
        }

        private static DateOnly? Earlier(DateOnly? a, DateOnly? b) => a is null ? b : b is null ? a : a < b ? a : b;
    }
}
