using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Files.Csv;

/// <summary>Prices of the kits: one row a size.</summary>
public static class PricesCsv
{
    private static readonly string[] Headings = ["product", "name", "size", "price", "currency"];
    private static readonly string[] Needed = ["product", "size", "price"];

    public static string Write(IEnumerable<ProductDocument> products) => CsvText.Write(Headings,
        products.SelectMany(p => p.Kits.Select(k => (IReadOnlyList<string>)[p.Id, p.Name, k.Size.Text, k.Price.ToString(CultureInfo.InvariantCulture), k.Currency ?? ""])));

    /// <summary>The products with the prices of the file: a size that is there gets the price, another is added, the rest stays. Only what changes.</summary>
    public static (IReadOnlyList<ProductDocument> Products, IReadOnlyList<Fault> Faults) Read(string csv, IReadOnlyList<ProductDocument> products)
    {
        var (rows, unread) = CsvText.Read(csv, Needed);
        var faults = unread.ToList();
        var changed = new Dictionary<string, ProductDocument>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            var id = row["product"];
            if (!changed.TryGetValue(id, out var product) && (product = products.FirstOrDefault(p => p.Id == id)) is null)
            {
                faults.Add(At(row, "product", "ProductUnknown",
                    v => v.Say($"There is no product \"{id}\".", $"No existe el producto «{id}»."), v => v.Say("Enter its data sheet first.", "Anote antes su ficha técnica.")));
                continue;
            }

            if (SizeMl(row["size"]) is not { } size)
            {
                faults.Add(At(row, "size", "SizeNotRead", v => v.Say($"\"{row["size"]}\" is no size.", $"«{row["size"]}» no es un tamaño."), v => v.Say("Write it with its unit, such as 24 fl oz.", "Escríbalo con su unidad, como 900 mL.")));
                continue;
            }

            if (row["price"] is ['=' or '+' or '@', ..])
            {
                faults.Add(At(row, "price", "PriceIsFormula", v => v.Say($"\"{row["price"]}\" is a formula.", $"«{row["price"]}» es una fórmula."), v => v.Say("Write the number it comes to.", "Escriba el número que da.")));
                continue;
            }

            // What is read is the number; the currency stands in its own column.
            if (MoneyReading.Money(row["price"], Currency.UsDollar).Failed(out var why, out var price) || price.Value < 0)
            {
                faults.Add(At(row, "price", why?.Code ?? "PriceNegative", why?.Text ?? (v => v.Say("The price is below zero.", "El precio es menor que cero.")), why?.Cure ?? (v => v.Say("Enter 0 or more.", "Escriba 0 o más."))));
                continue;
            }

            var currency = row["currency"].Length > 0 ? row["currency"].ToUpperInvariant() : null;
            if (currency is not null && !Currency.TryOf(currency, out _))
            {
                faults.Add(At(row, "currency", "CurrencyUnknown", v => v.Say($"\"{currency}\" is not the code of a currency (ISO 4217).", $"«{currency}» no es el código de una moneda (ISO 4217)."), v => v.Say("Write three letters, such as USD.", "Escriba tres letras, como USD.")));
                continue;
            }

            var known = product.Kits.Any(k => SizeMl(k.Size.Text) is { } own && Math.Abs(own - size) < 1e-6);
            changed[id] = product with
            {
                Kits = known
                    ? [.. product.Kits.Select(k => SizeMl(k.Size.Text) is { } own && Math.Abs(own - size) < 1e-6 ? Priced(k, price.Value, currency) : k)]
                    : [.. product.Kits, new KitDocument { Size = row["size"], Price = price.Value, Currency = currency }],
            };
        }

        return ([.. changed.Values.Where(p => !products.Any(own => own.Id == p.Id && own.Kits.SequenceEqual(p.Kits)))], faults);
    }

    /// <summary>84 is 84.00: a price that is the same stays as it was written.</summary>
    private static KitDocument Priced(KitDocument kit, decimal price, string? currency) =>
        kit.Price == price && (currency ?? kit.Currency) == kit.Currency ? kit : kit with { Price = price, Currency = currency ?? kit.Currency };

    private static double? SizeMl(string text) => Reading.Volume(text, null).Failed(out _, out var ml) ? null : ml;

    private static Fault At(CsvRow row, string heading, string code, Phrase text, Phrase cure) => new(heading, code, text, cure) { Line = row.Line };
}
