using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>Reads the coats of a job with their products.</summary>
internal static class CoatReading
{
    public static List<Coat> ReadAll(Fields fields, JobDocument document, IReadOnlyList<ProductDocument> library)
    {
        var products = new Products(fields, document.Products, library);
        var tops = (document.Tops ?? []).Select(t => t?.Name?.Trim() ?? "").Where(n => n.Length > 0).ToList();
        if (document.System is not { Count: > 0 })
        {
            fields.Add("system", "NoCoats",
                v => v.Say("No coat is named.", "No hay ninguna capa."),
                v => v.Say("Add a coat with its product.", "Añada una capa con su producto."));
        }

        var read = new List<Coat>();
        foreach (var (coat, path) in fields.Items("system", document.System, Ranges.MostCoats))
        {
            var before = fields.Count;
            if (products.Find(path + ".product", coat.Product) is not { } product) continue;
            var made = ReadCoat(fields, path, coat, product, tops);
            if (fields.Count == before) read.Add(made);
        }

        return read;
    }

    private static Coat ReadCoat(Fields fields, string path, CoatDocument coat, Product product, IReadOnlyList<string> tops)
    {
        var middle = (product.LeastWetFilm.Micrometres + product.MostWetFilm.Micrometres) / 2;
        var film = Fields.Or(coat.WetFilm, middle, e => fields.Film(path + ".wetFilm", e));
        FilmIsInRange(fields, path + ".wetFilm", film, product);
        var thinner = Fields.Or(coat.Thinner, 0, e => fields.Share(path + ".thinner", e, Ranges.Thinner));
        ThinnerIsPermitted(fields, path + ".thinner", thinner, product);
        var seen = Fields.OrNull(coat.TestBoardOpenTime, e => fields.Time(path + ".testBoardOpenTime", e, Ranges.Work));
        var bad = Fields.OrNull(coat.TestBoardFirstBad, e => fields.Time(path + ".testBoardFirstBad", e, Ranges.Work));
        BoardIsInOrder(fields, path + ".testBoardFirstBad", seen, bad);
        var roughness = Fields.Or(coat.Roughness, 0, e => fields.Roughness(path + ".roughness", e));
        var wipe = coat.Wipe is { } w ? ReadWipe(fields, path + ".wipe", w) : null;
        return new Coat(product, coat.Color, new WetFilm(film), thinner, seen is { } s ? new OpenTime(s, Origin.TestBoard) : null)
        {
            Path = path, TestBoardFirstBadS = bad, RoughnessUm = roughness, Wipe = wipe, OnTops = ReadOnTops(fields, path + ".onTops", coat.OnTops, tops),
        };
    }

    /// <summary>As the tops themselves are written; none where the coat goes on all of them.</summary>
    private static IReadOnlyList<string> ReadOnTops(Fields fields, string path, IReadOnlyList<string?>? onTops, IReadOnlyList<string> tops)
    {
        var read = new List<string>();
        foreach (var name in (onTops ?? []).Select(n => n?.Trim() ?? ""))
        {
            if (tops.FirstOrDefault(t => t.Equals(name, StringComparison.OrdinalIgnoreCase)) is { } top) read.Add(top);
            else
            {
                fields.Add(path, "TopUnknown",
                    v => v.Say($"No top is called {Misreads.Quote(v, name)}.", $"Ninguna cubierta se llama {Misreads.Quote(v, name)}.") + Nearest.DidYouMean(v, name, tops),
                    v => v.Say("Choose again the tops this coat goes on.", "Elija otra vez en qué cubiertas va esta capa."));
            }
        }

        var each = read.Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        return each.Count == tops.Count ? [] : each;
    }

    private static Wipe ReadWipe(Fields fields, string path, WipeDocument wipe) => new(
        wipe.Solvent,
        fields.Volume(path + ".amount", wipe.Amount, Ranges.WipeVolume),
        Fields.Or(wipe.Over, Defaults.WipeOver, e => fields.Time(path + ".over", e, Ranges.Work)));

    /// <summary>A board whose laps show earlier than they hold tells nothing.</summary>
    private static void BoardIsInOrder(Fields fields, string path, double? good, double? bad)
    {
        if (bad is not { } first || first > good) return;
        fields.Add(path, "BoardOutOfOrder",
            v => good is { } last
                ? v.Say($"The first bad lap, {Voice.Span(first)}, is not later than the last good one, {Voice.Span(last)}.", $"El primer solape malo, {Voice.Span(first)}, no es posterior al último bueno, {Voice.Span(last)}.")
                : v.Say("A first bad lap is given without the last good one.", "Se da el primer solape malo sin el último bueno."),
            v => v.Say("Enter the latest lap that did not show and the earliest that did; lap a new board if they cross.", "Anote el solape más tardío que no se ve y el más temprano que sí; si se cruzan, haga otra placa."));
    }

    private static void FilmIsInRange(Fields fields, string path, double film, Product product)
    {
        var (least, most) = (product.LeastWetFilm.Micrometres, product.MostWetFilm.Micrometres);
        // A film entered in the other unit system meets the limit within a hundredth of a micrometre.
        if (!(film < least - 0.01 || film > most + 0.01)) return;
        fields.Add(path, "FilmOutsideRange",
            v => v.Say($"{v.Film(film)} wet is outside the range of {product.Name}, {v.Film(least)} to {v.Film(most)}.", $"{v.Film(film)} en húmedo está fuera del margen de {product.Name}, de {v.Film(least)} a {v.Film(most)}."),
            v => v.Say("Enter a wet film within the data sheet's range.", "Escriba una película húmeda dentro del margen de la ficha técnica."));
    }

    /// <summary>A limit that is never passed: there is no own word for too much thinner.</summary>
    private static void ThinnerIsPermitted(Fields fields, string path, double share, Product product)
    {
        if (product.Thinner is not { } thinner)
        {
            if (!(share > 0)) return;
            fields.Add(path, "ThinnerNotPermitted",
                v => v.Say($"{product.Name} permits no thinner; {v.Percent(share, 2)} is entered.", $"{product.Name} no admite diluyente; se ha escrito {v.Percent(share, 2)}."),
                v => v.Say("Leave the thinner out.", "Quite el diluyente."));
        }
        else if (share > thinner.LimitFraction)
        {
            fields.Add(path, "ThinnerOverLimit",
                v => v.Say($"{v.Percent(share, 2)} of {thinner.Name} is over the limit of {product.Name}, {v.Percent(thinner.LimitFraction, 2)}.", $"{v.Percent(share, 2)} de {thinner.Name} supera el límite de {product.Name}, {v.Percent(thinner.LimitFraction, 2)}."),
                v => v.Say($"Enter at most {v.Percent(thinner.LimitFraction, 2)}; more is never permitted.", $"Escriba como mucho {v.Percent(thinner.LimitFraction, 2)}; más no se permite nunca."));
        }
    }

    /// <summary>The products of a document and of the library, each read once. Those of the document come first.</summary>
    private sealed class Products
    {
        private readonly Fields _fields;
        private readonly IReadOnlyList<ProductDocument> _library;
        private readonly Dictionary<string, Product?> _read = new(StringComparer.Ordinal);

        public Products(Fields fields, IReadOnlyList<ProductDocument>? carried, IReadOnlyList<ProductDocument> library)
        {
            (_fields, _library) = (fields, library);
            foreach (var (document, path) in fields.Items("products", carried, Ranges.MostProducts)) ReadOnce(path, document);
        }

        /// <summary>Null where there is none by that id, or where it has faults; either is said.</summary>
        public Product? Find(string path, string? id)
        {
            if (_read.TryGetValue(id ?? "", out var product)) return product;
            if (_library.FirstOrDefault(p => p.Id == id) is { } document) return ReadOnce($"library.{id}", document);

            var known = _read.Keys.Concat(_library.Select(p => p.Id)).Where(k => !string.IsNullOrEmpty(k)).Distinct(StringComparer.Ordinal).ToList();
            _fields.Add(path, "ProductUnknown",
                v => v.Say($"No product has the id {Misreads.Quote(v, id ?? "")}.", $"Ningún producto tiene el id {Misreads.Quote(v, id ?? "")}.") + Nearest.DidYouMean(v, id ?? "", known),
                v => known.Count == 0
                    ? v.Say("No product is known yet: enter one from its data sheet.", "Aún no hay productos: escriba uno a partir de su ficha técnica.")
                    : v.Say($"Known are: {string.Join(", ", known)}.", $"Se conocen: {string.Join(", ", known)}."));
            return null;
        }

        private Product? ReadOnce(string path, ProductDocument document)
        {
            var read = ProductReading.Read(document, path);
            _fields.AddRange(read.Faults);
            if (_read.TryAdd(document.Id ?? "", read.Product)) return read.Product;

            _fields.Add(path + ".id", "ProductTwice",
                v => v.Say($"Two products have the id {Misreads.Quote(v, document.Id ?? "")}.", $"Dos productos tienen el id {Misreads.Quote(v, document.Id ?? "")}."),
                v => v.Say("Give each product its own id.", "Dé a cada producto su propio id."));
            return null;
        }
    }
}
