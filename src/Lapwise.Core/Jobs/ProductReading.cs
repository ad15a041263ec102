using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What reading a product gave: the product, or null with every fault.</summary>
public sealed record ProductRead(Product? Product, IReadOnlyList<Fault> Faults);

/// <summary>Turns a product as its data sheet gives it into numbers, or into faults.</summary>
public static class ProductReading
{
    /// <param name="path">Where the product stands, put before each fault's path; empty for a file of its own.</param>
    public static ProductRead Read(ProductDocument document, string path)
    {
        ArgumentNullException.ThrowIfNull(document);
        var at = path.Length == 0 ? "" : path + ".";
        if (DocumentVersion.Refuse(at + "lapwise", document.Lapwise, ProductDocument.CurrentVersion) is { } refused) return new ProductRead(null, [refused]);

        // A data sheet goes from job to job, whatever their working units: it says every unit itself.
        var fields = new Fields(units: null);
        if (string.IsNullOrWhiteSpace(document.Id))
        {
            fields.Add(at + "id", "IdMissing",
                v => v.Say("The product has no id.", "El producto no tiene id."),
                v => v.Say("Give it a short id that jobs can name, such as clear-fast.", "Póngale un id corto que los trabajos puedan nombrar, como clear-fast."));
        }

        var name = fields.Name(at + "name", document.Name);
        var densityA = fields.Density(at + "densityA", document.DensityA);
        var densityB = fields.Density(at + "densityB", document.DensityB);
        var densityC = document.Mix?.C is null ? 1 : fields.Density(at + "densityC", document.DensityC);
        var mix = ReadMix(fields, at + "mix", document.Mix ?? new MixDocument(), densityA, densityB, densityC);
        var solids = fields.Share(at + "volumeSolids", document.VolumeSolids, Ranges.VolumeSolids);
        var thinner = document.Thinner is { } t ? ReadThinner(fields, at + "thinner", t) : null;
        var film = document.WetFilm ?? new WetFilmDocument();
        var leastFilm = fields.Film(at + "wetFilm.least", film.Least);
        var mostFilm = fields.Film(at + "wetFilm.most", film.Most);
        fields.InOrder(at + "wetFilm", leastFilm, mostFilm, (v, x) => v.Film(x));
        var sag = Fields.OrNull(document.SagLimit, e => fields.Film(at + "sagLimit", e));
        var potLife = ReadTimes(fields, at + "potLife", document.PotLife);
        var massLives = ReadMassLives(fields, at + "potLifeOfMass", document.PotLifeOfMass);
        var heat = Fields.OrNull(document.HeatOfMix, e => fields.HeatOfMix(at + "heatOfMix", e));
        var hottest = Fields.OrNull(document.HottestMix, e => fields.Temperature(at + "hottestMix", e, Ranges.HottestMix));
        var induction = Fields.OrNull(document.Induction, e => fields.Time(at + "induction", e, Ranges.Pause));
        var openTime = ReadTimes(fields, at + "openTime", document.OpenTime);
        var drying = document.Drying is { } d ? ReadDrying(fields, at + "drying", d) : null;
        var dryToTouch = document.DryToTouch is { } touch
            ? new TimeAt(fields.Time(at + "dryToTouch.time", touch.Time, Ranges.Wait), fields.Temperature(at + "dryToTouch.at", touch.At, Ranges.SheetTemperature))
            : null;
        var recoat = document.Recoat is { } r ? ReadRecoat(fields, at + "recoat", r) : null;
        var usable = document.UsableFrom is { } u ? ReadUsable(fields, at + "usableFrom", u) : null;
        var limits = ReadLimits(fields, at + "limits", document.Limits ?? new LimitsDocument());
        var pour = ReadPour(fields, at + "pour", document.Pour, document.Method);
        var largestBatch = Fields.OrNull(document.LargestBatch, e => fields.Volume(at + "largestBatch", e, Ranges.BatchVolume));
        var kits = ReadKits(fields, at + "kits", document.Kits);
        var voc = document.Voc is { } v ? ReadVoc(fields, at + "voc", v, threeParts: document.Mix?.C is not null) : [];
        var label = ReadLabel(fields, at + "label", document.Label ?? []);
        var uses = ReadUses(fields, at + "measuredUse", document.MeasuredUse);
        if (fields.Count > 0) return new ProductRead(null, fields.Faults);

        return new ProductRead(
            new Product(
                document.Id.Trim(), name, mix, densityA, densityB, solids, thinner,
                new WetFilm(leastFilm), new WetFilm(mostFilm), sag is { } s ? new WetFilm(s) : null,
                potLife, openTime, recoat, usable, limits, document.StirFirst, document.Method, document.EndsBy,
                largestBatch, kits, document.Hazards ?? [])
            {
                Voc = voc,
                Solvent = document.Solvent,
                Label = label,
                MeasuredUse = uses,
                DensityCGPerMl = densityC,
                Strain = string.IsNullOrWhiteSpace(document.Strain) ? null : document.Strain.Trim(),
                MassLives = massLives,
                HeatJPerG = heat,
                HottestMixC = hottest ?? Defaults.HottestMix.Value,
                InductionS = induction ?? 0,
                Drying = drying,
                DryToTouch = dryToTouch,
                WholeTopAtOnce = document.WholeTopAtOnce ?? false,
                BreakAllowed = document.BreakAllowed ?? true,
                Pour = pour,
            },
            fields.Faults);
    }

    private static MixRatio ReadMix(Fields fields, string path, MixDocument mix, double densityA, double densityB, double densityC)
    {
        PartIsPositive(fields, path + ".a", mix.A);
        PartIsPositive(fields, path + ".b", mix.B);
        if (mix.C is { } parts) PartIsPositive(fields, path + ".c", parts);
        var c = mix.C ?? 0;
        return mix.By == MixBasis.Volume
            ? new MixRatio(mix.By, mix.A, mix.B, c)
            : new MixRatio(mix.By, mix.A / densityA, mix.B / densityB, c / densityC);
    }

    private static void PartIsPositive(Fields fields, string path, double parts)
    {
        const double most = 10_000;
        if (parts > 0 && parts <= most) return;
        fields.Add(path, "MixRatioNotPossible",
            v => v.Say($"{v.Number(parts)} parts cannot be mixed; each part must be more than 0 and at most {v.Number(most)}.", $"No se pueden mezclar {v.Number(parts)} partes; cada parte debe ser más que 0 y como mucho {v.Number(most)}."),
            v => v.Say("Enter the ratio of the data sheet, such as a: 2, b: 1.", "Escriba la proporción de la ficha técnica, como a: 2, b: 1."));
    }

    private static Thinner ReadThinner(Fields fields, string path, ThinnerDocument thinner)
    {
        var read = new Thinner(
            fields.Name(path + ".name", thinner.Name),
            fields.Share(path + ".limit", thinner.Limit, Ranges.Thinner),
            Fields.Or(thinner.Density, Defaults.ThinnerDensity, e => fields.Density(path + ".density", e)));
        return thinner.Is is { } kind ? read with { Kind = kind } : read;
    }

    private static List<PartVoc> ReadVoc(Fields fields, string path, VocDocument voc, bool threeParts)
    {
        var read = new List<PartVoc>();
        foreach (var (part, name) in new[] { (voc.A ?? new VocPartDocument(), "a"), (voc.B, "b"), (voc.C, "c") }.Take(threeParts ? 3 : 2))
        {
            if (part is null)
            {
                read.Add(new PartVoc(0, 0, 0));
                continue;
            }

            var place = $"{path}.{name}";
            var water = Fields.Or(part.Water, 0, e => fields.Share(place + ".water", e, Ranges.Whole));
            var exempt = Fields.Or(part.Exempt, 0, e => fields.Share(place + ".exempt", e, Ranges.Whole));
            read.Add(new PartVoc(fields.Concentration(place + ".voc", part.Voc, Ranges.VocConcentration) * 1000, water, exempt));
            if (!(water + exempt >= 1)) continue;
            fields.Add(place + ".water", "NothingButWater",
                v => v.Say($"Water and exempt solvent come to {v.Percent(water + exempt)}: nothing of the coating is left.", $"El agua y el disolvente exento suman {v.Percent(water + exempt)}: no queda nada del producto."),
                v => v.Say("Check the shares by volume.", "Revise las partes en volumen."));
        }

        return read;
    }

    /// <summary>A hazard statement is H and three figures, with letters after them on some.</summary>
    private static List<string> ReadLabel(Fields fields, string path, IReadOnlyList<string> label)
    {
        var read = new List<string>();
        for (var i = 0; i < label.Count; i++)
        {
            var code = (label[i] ?? "").Trim().ToUpperInvariant();
            if (code.Length is >= 4 and <= 6 && code[0] is 'H' && code[1..4].All(char.IsAsciiDigit)) read.Add(code);
            else fields.Add($"{path}[{i}]", "HazardStatementUnclear",
                v => v.Say($"{Misreads.Quote(v, code)} is no hazard statement.", $"{Misreads.Quote(v, code)} no es una indicación de peligro."),
                v => v.Say("Write it as on the label, such as H317.", "Escríbala como en la etiqueta, como H317."));
        }

        return read;
    }

    private static List<MeasuredUse> ReadUses(Fields fields, string path, IReadOnlyList<MeasuredUseDocument>? uses)
    {
        var read = new List<MeasuredUse>();
        foreach (var (use, place) in fields.Items(path, uses, Ranges.MostMeasuredUses))
            read.Add(new MeasuredUse(fields.Area(place + ".area", use.Area, Ranges.UsedArea), fields.Film(place + ".wetFilm", use.WetFilm), fields.Volume(place + ".used", use.Used, Ranges.BatchVolume)));
        return read;
    }

    /// <summary>One time, or two at different temperatures of which the hotter is the shorter.</summary>
    private static List<TimeAt> ReadTimes(Fields fields, string path, IReadOnlyList<TimeAtDocument>? times)
    {
        var count = times?.Count ?? 0;
        if (count is not (1 or 2))
        {
            fields.Add(path, "OneOrTwoTimes",
                v => v.Say($"{count} times are given; one or two are needed.", $"Se dan {count} tiempos; hacen falta uno o dos."),
                v => v.Say("Enter the time at the data sheet's temperature, and at a second one if it gives one.", "Escriba el tiempo a la temperatura de la ficha, y a una segunda si la da."));
            return [];
        }

        var read = new List<TimeAt>();
        foreach (var (time, place) in fields.Items(path, times, 2))
        {
            var seconds = fields.Time(place + ".time", time.Time, Ranges.Work);
            read.Add(new TimeAt(seconds, fields.Temperature(place + ".at", time.At, Ranges.SheetTemperature)));
        }

        if (read.Count == 2) HotterIsShorter(fields, path, read[0], read[1]);
        return read;
    }

    private static List<MassLife> ReadMassLives(Fields fields, string path, IReadOnlyList<MassLifeDocument>? lives)
    {
        var read = new List<MassLife>();
        foreach (var (life, place) in fields.Items(path, lives, Ranges.MostMassLives))
        {
            var mass = fields.Mass(place + ".mass", life.Mass, Ranges.MixMass);
            var seconds = fields.Time(place + ".time", life.Time, Ranges.Work);
            read.Add(new MassLife(mass, seconds, fields.Temperature(place + ".at", life.At, Ranges.MixTemperature)));
        }

        MoreIsShorter(fields, path, read);
        return read;
    }

    /// <summary>At one temperature a larger mass keeps its heat and cannot live longer.</summary>
    private static void MoreIsShorter(Fields fields, string path, List<MassLife> lives)
    {
        foreach (var less in lives)
        {
            if (lives.Find(l => l.MassG > less.MassG && l.Seconds > less.Seconds && Math.Abs(l.Celsius - less.Celsius) < 0.5) is not { } more) continue;
            fields.Add(path, "MoreLastsLonger",
                v => v.Say($"{v.Mass(more.MassG)} is said to live longer ({Voice.Span(more.Seconds)}) than {v.Mass(less.MassG)} ({Voice.Span(less.Seconds)}) at the same temperature.",
                    $"Según esto, {v.Mass(more.MassG)} viven más ({Voice.Span(more.Seconds)}) que {v.Mass(less.MassG)} ({Voice.Span(less.Seconds)}) a la misma temperatura."),
                v => v.Say("A larger mass keeps its heat and lives shorter: check which time belongs to which mass.", "Una masa mayor guarda su calor y vive menos: revise qué tiempo corresponde a cada masa."));
            return;
        }
    }

    private static Drying ReadDrying(Fields fields, string path, DryingDocument drying) => new(
        drying.Carrier,
        fields.Share(path + ".evaporation", drying.Evaporation, Ranges.Whole),
        Fields.Or(drying.Humidity, Defaults.SheetHumidity, e => fields.Humidity(path + ".humidity", e)));

    private static void HotterIsShorter(Fields fields, string path, TimeAt one, TimeAt other)
    {
        var (cool, hot) = one.Celsius <= other.Celsius ? (one, other) : (other, one);
        if (hot.Celsius - cool.Celsius < 0.5)
        {
            fields.Add(path, "SameTemperatureTwice",
                v => v.Say($"Both times are at {v.Temperature(hot.Celsius)}.", $"Los dos tiempos son a {v.Temperature(hot.Celsius)}."),
                v => v.Say("Enter times at two different temperatures, or one time.", "Escriba tiempos a dos temperaturas distintas, o un solo tiempo."));
        }
        else if (hot.Seconds >= cool.Seconds)
        {
            fields.Add(path, "HotterLastsLonger",
                v => v.Say($"{Voice.Span(hot.Seconds)} at {v.Temperature(hot.Celsius)} is not shorter than {Voice.Span(cool.Seconds)} at {v.Temperature(cool.Celsius)}.", $"{Voice.Span(hot.Seconds)} a {v.Temperature(hot.Celsius)} no es menos que {Voice.Span(cool.Seconds)} a {v.Temperature(cool.Celsius)}."),
                v => v.Say("Warmth shortens these times: check which belongs to which temperature.", "El calor acorta estos tiempos: revise cuál corresponde a cada temperatura."));
        }
    }

    private static Recoat ReadRecoat(Fields fields, string path, RecoatDocument recoat)
    {
        var earliest = fields.Time(path + ".earliest", recoat.Earliest, Ranges.Wait);
        var latest = fields.Time(path + ".latest", recoat.Latest, Ranges.Wait);
        fields.InOrder(path, earliest, latest, (_, x) => Voice.Span(x));
        return new Recoat(earliest, latest, fields.Temperature(path + ".at", recoat.At, Ranges.SheetTemperature))
        {
            Sanding = string.IsNullOrWhiteSpace(recoat.Sanding) ? null : recoat.Sanding.Trim(),
            IsAlwaysSanded = recoat.AlwaysSand ?? false,
        };
    }

    private static UsableFrom ReadUsable(Fields fields, string path, UsableFromDocument usable)
    {
        var light = fields.Time(path + ".lightUse", usable.LightUse, Ranges.Wait);
        var water = Fields.OrNull(usable.Water, e => fields.Time(path + ".water", e, Ranges.Wait));
        var full = fields.Time(path + ".fullUse", usable.FullUse, Ranges.Wait);
        var cure = Fields.OrNull(usable.FullCure, e => fields.Time(path + ".fullCure", e, Ranges.Wait));
        fields.InOrder(path, light, full, (_, x) => Voice.Span(x));
        if (cure is { } cured) fields.InOrder(path, full, cured, (_, x) => Voice.Span(x));
        return new UsableFrom(light, water, full)
        {
            FullCureS = cure,
            AtCelsius = Fields.Or(usable.At, Defaults.SheetTemperature, e => fields.Temperature(path + ".at", e, Ranges.SheetTemperature)),
        };
    }

    private static ProductLimits ReadLimits(Fields fields, string path, LimitsDocument limits)
    {
        var least = fields.Temperature(path + ".airLeast", limits.AirLeast, Ranges.SheetTemperature);
        var most = fields.Temperature(path + ".airMost", limits.AirMost, Ranges.SheetTemperature);
        fields.InOrder(path, least, most, (v, x) => v.Temperature(x));
        var surfaceLeast = Fields.Or(limits.SurfaceLeast, least, e => fields.Temperature(path + ".surfaceLeast", e, Ranges.SheetTemperature));
        var surfaceMost = Fields.Or(limits.SurfaceMost, most, e => fields.Temperature(path + ".surfaceMost", e, Ranges.SheetTemperature));
        if (least <= most) fields.InOrder(path + ".surfaceMost", surfaceLeast, surfaceMost, (v, x) => v.Temperature(x));
        return new ProductLimits(
            least, most,
            fields.Humidity(path + ".humidityMost", limits.HumidityMost),
            Fields.Or(limits.DewMargin, Defaults.DewMargin, e => fields.TemperatureDifference(path + ".dewMargin", e, Ranges.DewMargin)))
        {
            SurfaceLeastC = surfaceLeast,
            SurfaceMostC = surfaceMost,
        };
    }

    private static PourTimes ReadPour(Fields fields, string path, PourDocument? pour, ApplicationMethod method)
    {
        if (pour is null) return PourTimes.None;
        if (method != ApplicationMethod.Poured)
        {
            fields.Add(path, "PourOfCoatNotPoured",
                v => v.Say("What follows a pour is given, but this product is not poured.", "Se da lo que sigue al vertido, pero este producto no se vierte."),
                v => v.Say("Write method: poured, or take this out.", "Escriba method: poured, o quite esto."));
        }

        var level = Fields.OrNull(pour.LevelWithin, e => fields.Time(path + ".levelWithin", e, Ranges.Work));
        return new PourTimes(
            level,
            ReadPasses(fields, path + ".bubblePassesAt", pour.BubblePassesAt ?? []),
            pour.ScrapeDrips is { } scrape ? ReadSpan(fields, path + ".scrapeDrips", scrape) : null);
    }

    private static List<double> ReadPasses(Fields fields, string path, IReadOnlyList<Entry> passes)
    {
        if (passes.Count > Ranges.MostBubblePasses) fields.TooMany(path, passes.Count, Ranges.MostBubblePasses);
        var read = passes.Take(Ranges.MostBubblePasses).Select((pass, i) => fields.Time($"{path}[{i}]", pass, Ranges.Work)).ToList();
        for (var i = 1; i < read.Count; i++) fields.InOrder($"{path}[{i}]", read[i - 1], read[i], (_, x) => Voice.Span(x));
        return read;
    }

    private static (double, double) ReadSpan(Fields fields, string path, SpanDocument span)
    {
        var from = fields.Time(path + ".from", span.From, Ranges.Wait);
        var to = fields.Time(path + ".to", span.To, Ranges.Wait);
        fields.InOrder(path, from, to, (_, x) => Voice.Span(x));
        return (from, to);
    }

    private static List<Kit> ReadKits(Fields fields, string path, IReadOnlyList<KitDocument>? kits)
    {
        if (kits is not { Count: > 0 })
        {
            fields.Add(path, "NoKits",
                v => v.Say("No kit size is given, so nothing can be bought.", "No se da ningún tamaño de juego, así que no se puede comprar nada."),
                v => v.Say("Enter at least one size with its price.", "Escriba al menos un tamaño con su precio."));
        }

        var read = new List<Kit>();
        foreach (var (kit, place) in fields.Items(path, kits, Ranges.MostKits))
        {
            var size = fields.Volume(place + ".size", kit.Size, Ranges.KitVolume);
            if (kit.Price > MoneyReading.Most)
            {
                fields.Add(place + ".price", "PriceTooLarge",
                    v => v.Say($"A price of {v.Number((double)kit.Price)} is more than {v.Number((double)MoneyReading.Most)}.", $"Un precio de {v.Number((double)kit.Price)} es más de {v.Number((double)MoneyReading.Most)}."),
                    v => v.Say("Check the digits.", "Revise las cifras."));
            }
            else if (kit.Price < 0)
            {
                fields.Add(place + ".price", "PriceNegative",
                    v => v.Say($"A price of {v.Number((double)kit.Price)} is below zero.", $"Un precio de {v.Number((double)kit.Price)} es menor que cero."),
                    v => v.Say("Enter what the kit costs, or 0.", "Escriba lo que cuesta el juego, o 0."));
            }

            Currency? currency = null;
            if (!string.IsNullOrWhiteSpace(kit.Currency) && !Currency.TryOf(kit.Currency, out currency))
            {
                fields.Add(place + ".currency", "CurrencyUnknown",
                    v => v.Say($"{Misreads.Quote(v, kit.Currency)} is not the code of a currency (ISO 4217).", $"{Misreads.Quote(v, kit.Currency)} no es el código de una moneda (ISO 4217)."),
                    v => v.Say("Write three letters, such as USD.", "Escriba tres letras, como USD."));
            }

            read.Add(new Kit(size, kit.Price) { Currency = currency });
        }

        return read;
    }
}
