using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Exotherm;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Quick;

/// <summary>Pot life of a mass in a bucket and in a tray, from lives the data sheet gives.</summary>
internal static class QuickPotLife
{
    private static readonly QuickField Time = Asks.Time("time", v => v.Say("pot life of the data sheet", "vida de la mezcla de la ficha")).Must;
    private static readonly QuickField At = Asks.Temperature("at", v => v.Say("its temperature", "su temperatura")).Must;
    private static readonly QuickField Of = Asks.Mass("of", v => v.Say("its mass, as 100 g; left out: no effect of mass is claimed", "su masa, como 100 g; sin ella no se cuenta la masa")) with { Example = _ => "100g" };
    private static readonly QuickField Time2 = Asks.Time("time2", v => v.Say("second pot life", "segunda vida de la mezcla")).CanWait;
    private static readonly QuickField At2 = Asks.Temperature("at2", v => v.Say("its temperature", "su temperatura")).CanWait;
    private static readonly QuickField Of2 = Asks.Mass("of2", v => v.Say("its mass", "su masa")) with { Finer = true, Example = _ => "1kg" };
    private static readonly QuickField Mass = Asks.Mass("mass", v => v.Say("mass mixed today", "masa que se mezcla hoy"));
    private static readonly QuickField Material = Asks.Temperature("material", v => v.Say("material temperature today", "temperatura del material hoy")).Must;
    private static readonly QuickField Air = Asks.Temperature("air", v => v.Say("room temperature; left out: the material's", "temperatura de la sala; sin ella, la del material"));
    private static readonly QuickField Width = Asks.Length("width", v => v.Say("bucket's diameter; left out: as wide as the mix is deep", "diámetro del cubo; sin él, tan ancho como hondo")) with { Finer = true, Example = v => v.Units is UnitSystem.Us ? "7in" : "180mm" };
    private static readonly QuickField Density = Asks.Density("density", v => v.Say("density of the mix", "densidad de la mezcla")) with { Finer = true, Else = "1.1 g/mL" };
    private static readonly QuickField Heat = Asks.Heat("heat", v => v.Say("heat of the mix", "calor de la mezcla")).CanWait;
    private static readonly QuickField Ends = Asks.OneOf("ends", v => v.Say("how the mix ends", "cómo acaba la mezcla"), Asks.Word("gels", "it gels", "gelifica"), Asks.Word("overheats", "it overheats", "se recalienta"), Asks.Word("hidden", "hidden: it looks usable and is not", "oculto: parece útil y no lo es"));

    public static readonly QuickSum Sum = new("pot-life", Phases.Conditions, v => v.Say("Pot life", "Vida de la mezcla"),
        v => v.Say("By when must this batch be poured out?", "¿Para cuándo hay que haber vertido esta mezcla?"),
        [Time, At, Of, Time2, At2, Of2, Mass, Material, Air, Width, Density, Heat, Ends], Work);

    private static readonly Reason OnlyTheClock = new("OnlyTheClockTells", Limit.Note,
        v => v.Say("Such a mix looks and rolls the same after its pot life as before: the data sheet's clock rules, whatever the mass.", "Una mezcla así se ve y se aplica igual antes y después de su vida: manda el reloj de la ficha técnica, sea cual sea la masa."),
        v => v.Say("Write the use-by time on the cup when A touches B, and throw away what is left at that time.", "Escriba la hora límite en el vaso en cuanto A toque B, y deseche lo que quede a esa hora."));

    private static QuickResult Work(QuickValues values)
    {
        var points = QuickSheet.Points(values, Time, At, Time2, At2);
        if (values.Has(Of) != values.Has(Mass))
        {
            values.Refuse(values.Has(Of) ? Mass : Of, "MassHalf",
                v => v.Say("The effect of the mass needs both the mass of the data sheet's life and the mass mixed today.", "El efecto de la masa necesita la masa de la ficha y la que se mezcla hoy."),
                v => v.Say("Give both, or neither.", "Dé las dos, o ninguna."));
        }

        if (values.If(Width) is <= 0) values.Refuse(Width, "NotPositive", v => v.Say("A bucket has a width.", "Un cubo tiene un ancho."), v => v.Say("Enter its diameter.", "Escriba su diámetro."));
        if (values.Faults.Count > 0) return new QuickResult([]);
        var density = values.Of(Density);
        List<MassLife> lives = values.If(Of) is { } of ? [new(of, points[0].Seconds, points[0].Celsius)] : [];
        if (lives.Count > 0 && points.Count > 1) lives.Add(new(values.Or(Of2, lives[0].MassG), points[1].Seconds, points[1].Celsius));
        var product = QuickSheet.Blank with
        {
            DensityAGPerMl = density,
            DensityBGPerMl = density,
            PotLife = [.. points.Take(values.Has(Of2) && lives[1].MassG != lives[0].MassG ? 1 : 2)],
            MassLives = lives,
            HeatJPerG = values.If(Heat),
            EndsBy = values.Word(Ends) switch { "overheats" => EndOfPotLife.Overheats, "hidden" => EndOfPotLife.Hidden, _ => EndOfPotLife.Gels },
            Hazards = [Hazard.HotMix],
        };
        var material = values.Of(Material);
        var air = values.Or(Air, material);
        var heat = values.If(Mass) is { } mass ? BatchHeat.Of(product, mass / density, material, air, new Vessel.Bucket(values.If(Width))) : null;
        var (life, basis, reasons) = Clocks.PotLifeOf(QuickSheet.Coat(product), QuickSheet.Room(air, air, material), heat);
        List<QuickRow> rows = [new("pourOutByS", v => v.Say("pour it out by, from the first contact of A and B", "viértala antes de, desde que A toca B"), life.Seconds, _ => Voice.Span(life.Seconds), basis)];
        if (product.EndsBy is EndOfPotLife.Hidden) return new QuickResult(rows) { Reasons = [OnlyTheClock], Hazards = [Hazard.HotMix] };
        if (heat is null) return new QuickResult(rows) { Reasons = [.. reasons], Hazards = [Hazard.HotMix] };

        var fit = heat.Fit;
        rows.Add(new("trayS", v => v.Say("poured out flat in a roller tray it lives", "extendida en una bandeja vive"), heat.InTray.Seconds, _ => Voice.Span(heat.InTray.Seconds), heat.Basis));
        rows.Add(new("peakC", v => v.Say("left standing it would reach", "si se deja ahí llegaría a"), heat.InVessel.PeakCelsius, v => v.Temperature(heat.InVessel.PeakCelsius), heat.Basis));
        rows.Add(new("isothermalS", v => v.Say("a thin film of it, kept at room temperature, gels in", "una película fina, a temperatura de la sala, gelifica en"), fit.Mix.IsothermalS(air, Reactivity.EndConversion), _ => Voice.Span(fit.Mix.IsothermalS(air, Reactivity.EndConversion)), heat.Basis));
        rows.Add(new("worstMiss", v => v.Say("the fit misses the data sheet's lives by at most", "el ajuste falla en los tiempos de la ficha como mucho"), fit.WorstMiss, v => v.Percent(fit.WorstMiss, 1), heat.Basis));
        return new QuickResult(rows)
        {
            Reasons = [.. reasons],
            Hazards = [Hazard.HotMix],
            Curve = HeatCurve.Of(heat),
        };
    }
}
