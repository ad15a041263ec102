using System.Globalization;
using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>What a job would write into a quick sum, so that the sum opens with the job's own figures and gives its number.</summary>
/// <param name="Materials">Null: not worked out yet.</param>
/// <param name="Conditions">Null: not worked out yet.</param>
/// <param name="Units">What the amounts are written in.</param>
public sealed record QuickFilling(Job Job, JobMaterials? Materials, JobConditions? Conditions, UnitSystem Units)
{
    private bool IsUs => Units is UnitSystem.Us;

    /// <summary>By field name, in the order of the sum; empty where the job has nothing for it.</summary>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    public IReadOnlyDictionary<string, string> Of(QuickSum sum, int coat)
    {
        var at = coat < Job.System.Count ? Job.System[coat] : null;
        var material = Materials?.Coats.FirstOrDefault(c => c.Coat.Path == at?.Path);
        var conditions = Conditions?.Coats.FirstOrDefault(c => c.Coat.Path == at?.Path);
        IEnumerable<(string Name, string? Text)> written = (sum.Name, at) switch
        {
            ("width", _) => Width(),
            ("dew-point", _) => IsRead ? [("air", Celsius(Job.Room.Air.Celsius)), ("humidity", Share(Job.Room.RelativeHumidity)), ("surface", Celsius(Job.Room.Surface.Celsius))] : [],
            (_, null) => [],
            ("film", _) => [("wet", Film(at.WetFilm.Micrometres)), ("solids", Share(at.Product.VolumeSolids)), ("thinner", Thinner(at))],
            ("spread", _) when material is not null => Spread(at, material),
            ("mix", _) => Mix(at, material),
            ("voc", _) when at.Product.Recipe.Parts.Count == 2 => Voc(at),
            ("day", _) when IsRead => Day(at.Product),
            ("open-time", _) when IsRead => OpenTime(at),
            ("pot-life", _) when IsRead => PotLife(at),
            ("cure", _) when IsRead => Cure(at),
            ("vapour", _) when conditions is { Vapours: [var vapour, ..] } => Vapour(vapour),
            _ => [],
        };
        return written.Where(w => w.Text is not null).ToDictionary(w => w.Name, w => w.Text!, StringComparer.Ordinal);
    }

    private bool IsRead => !double.IsNaN(Job.Room.RelativeHumidity) && !double.IsNaN(Job.Room.Air.Celsius) && !double.IsNaN(Job.Room.Surface.Celsius) && !double.IsNaN(Job.Room.Material.Celsius);

    /// <summary>The first open edge.</summary>
    private IEnumerable<(string, string?)> Width()
    {
        var (top, profile) = Job.Tops.SelectMany(t => t.Edges.OrderBy(e => e.Key).Select(e => (Top: t, (e.Value as Edge.Open)?.Profile))).FirstOrDefault(e => e.Profile is { Shape: not ProfileShape.Measured });
        return profile is null ? [] :
        [
            ("shape", char.ToLowerInvariant(profile.Shape.ToString()[0]) + profile.Shape.ToString()[1..]), ("thickness", Length(top.ThicknessM)),
            ("radius", profile.RadiusM > 0 ? Length(profile.RadiusM) : null), ("underside", profile.UndersideM > 0 ? Length(profile.UndersideM) : null),
        ];
    }

    private IEnumerable<(string, string?)> Spread(Coat coat, CoatMaterial material)
    {
        // Rough ground has a field of its own; everything else that is lost is a share of the need.
        var lost = material.Losses.Where(l => l.Kind is not LossKind.Roughness).Sum(l => l.Ml);
        return material.NeedMl <= 0 ? [] :
        [
            ("area", Area(material.AreaM2)), ("wet", Film(coat.WetFilm.Micrometres)), ("solids", Share(coat.Product.VolumeSolids)), ("thinner", Thinner(coat)),
            ("loss", Share(lost / material.NeedMl)), ("rough", coat.RoughnessUm > 0 ? Film(coat.RoughnessUm) : null),
        ];
    }

    private IEnumerable<(string, string?)> Mix(Coat coat, CoatMaterial? material)
    {
        var parts = coat.Product.Recipe.Parts;
        var byMass = coat.Product.Mix.EnteredBy is MixBasis.Mass;
        return
        [
            ("by", byMass ? "mass" : "volume"), .. parts.Select(p => (p.Name.ToLowerInvariant(), (string?)Number(byMass ? p.ByVolume * p.DensityGPerMl : p.ByVolume))), .. parts.Select(p => ("density" + p.Name, (string?)Density(p.DensityGPerMl))),
            ("total", material is { NeedMl: > 0 } ? Volume(material.NeedMl) : null), ("thinner", Thinner(coat)),
        ];
    }

    private IEnumerable<(string, string?)> Voc(Coat coat)
    {
        var (product, most) = (coat.Product, Job.Aims.VocMostGPerL);
        var parts = product.Recipe.Parts;
        IEnumerable<(string, string?)> sheet = product.Voc.Count < 2 ? [] :
        [
            ("vocA", GPerL(product.Voc[0].GPerL)), ("vocB", GPerL(product.Voc[1].GPerL)), ("waterA", Share(product.Voc[0].WaterShare)), ("waterB", Share(product.Voc[1].WaterShare)),
            ("exemptA", Share(product.Voc[0].ExemptShare)), ("exemptB", Share(product.Voc[1].ExemptShare)),
        ];
        IEnumerable<(string, string?)> thinner = coat.ThinnerFraction <= 0 || product.Thinner is not { } with ? [] :
        [
            ("thinner", Thinner(coat)), ("thinnerIs", with.Kind switch { ThinnerKind.Water => "water", ThinnerKind.Exempt => "exempt", _ => "solvent" }),
            ("vocThinner", with.Kind is ThinnerKind.Solvent ? GPerL(with.DensityGPerMl * 1000) : null),
        ];
        return [("a", Number(parts[0].ByVolume)), ("b", Number(parts[1].ByVolume)), .. sheet, .. thinner, ("limit", most is { } limit ? GPerL(limit) : null)];
    }

    private IEnumerable<(string, string?)> Day(Product product) =>
    [
        ("mean", Celsius(Job.Room.Air.Celsius)), ("humidity", Share(Job.Room.RelativeHumidity)), ("swing", Kelvin(Job.Timeline.DaySwingK)), ("warmest", Number(Job.Timeline.WarmestAtMin / 60.0)),
        ("least", Celsius(product.Limits.AirLeastC)), ("most", Celsius(product.Limits.AirMostC)), ("mostHumidity", Share(product.Limits.HumidityMost)),
        ("touch", product.DryToTouch is { } touch ? Time(touch.Seconds) : null),
    ];

    private IEnumerable<(string, string?)> OpenTime(Coat coat)
    {
        var product = coat.Product;
        var room = Job.Room;
        IEnumerable<(string, string?)> air = product.Drying is not { } drying ? [] :
        [
            ("evaporation", Share(drying.EvaporationShare)), ("carrier", drying.Carrier is Carrier.Water ? "water" : "solvent"), ("solids", Share(product.VolumeSolids)), ("wet", Film(coat.WetFilm.Micrometres)),
            ("sheetWet", Film((product.LeastWetFilm.Micrometres + product.MostWetFilm.Micrometres) / 2)), ("thinner", Thinner(coat)), ("sheetHumidity", Share(drying.SheetHumidity)),
        ];
        return
        [
            .. Points(product.OpenTime), ("surface", Celsius(room.Surface.Celsius)), ("air", Celsius(room.Air.Celsius)), ("humidity", Share(room.RelativeHumidity)),
            ("movement", room.AirMovement switch { AirMovement.Moving => "moving", AirMovement.Slight => "slight", _ => "still" }), .. air,
            ("lastGood", coat.TestBoard is { } board ? Time(board.Seconds) : null), ("firstBad", coat.TestBoard is not null && coat.TestBoardFirstBadS is { } bad ? Time(bad) : null),
        ];
    }

    private IEnumerable<(string, string?)> PotLife(Coat coat)
    {
        var product = coat.Product;
        var lives = product.EndsBy is EndOfPotLife.Hidden ? [] : product.MassLives;
        IEnumerable<(string, string?)> sheet = lives.Count == 0 ? Points(product.PotLife) :
        [
            ("of", Mass(lives[0].MassG)), ("time", Time(lives[0].Seconds)), ("at", Celsius(lives[0].Celsius)),
            .. lives.Count > 1 ? [("of2", (string?)Mass(lives[1].MassG)), ("time2", Time(lives[1].Seconds)), ("at2", Celsius(lives[1].Celsius))] : Array.Empty<(string, string?)>(),
            ("mass", Mass(Consumption.Of(coat, Job.Tools).LargestBatchMl * product.MixedDensityGPerMl)), ("heat", product.HeatJPerG is { } heat ? Number(heat) + " J/g" : null),
            ("density", Density(product.MixedDensityGPerMl)),
        ];
        return
        [
            .. sheet, ("material", Celsius(Job.Room.Material.Celsius)), ("air", Celsius(Job.Room.Air.Celsius)),
            ("ends", product.EndsBy switch { EndOfPotLife.Overheats => "overheats", EndOfPotLife.Hidden => "hidden", _ => "gels" }),
        ];
    }

    /// <summary>The wait for the next coat, through the day of the top.</summary>
    private IEnumerable<(string, string?)> Cure(Coat coat)
    {
        const double apartK = 10;
        var waits = Waits.Of(coat.Product, [new TemperatureAt(0, Job.Room.Surface.Celsius)], holdsLast: true);
        if (Waits.NextOf(waits) is not { } wait) return [];
        var (law, swing) = (Waits.LawOf(coat.Product, wait), DailySwing.OrSteady(Job));
        return
        [
            ("time", Time(wait.SheetS)), ("at", Celsius(wait.SheetCelsius)),
            .. law is TemperatureLaw.ThroughTwoPoints ? [("time2", (string?)Time(law.SecondsAt(wait.SheetCelsius + apartK))), ("at2", Celsius(wait.SheetCelsius + apartK))] : Array.Empty<(string, string?)>(),
            ("room", Celsius(Job.Room.Surface.Celsius)),
            // The top follows the air late, and less.
            .. swing.SwingK > 0 ? [("swing", (string?)Kelvin(swing.SwingK * swing.TopShare)), ("warmest", Number((swing.WarmestHour + swing.TopLagH) % 24))] : Array.Empty<(string, string?)>(),
        ];
    }

    private IEnumerable<(string, string?)> Vapour(CoatVapour vapour) =>
    [
        ("of", vapour.Solvent.Id), ("amount", Volume(vapour.LiquidMl)), ("over", Time(vapour.Room.EvaporatingS)),
        ("volume", IsUs ? $"{Number(vapour.Room.RoomM3 / Factors.CubicMetresPerCubicFoot)} ft³" : $"{Number(vapour.Room.RoomM3)} m³"),
        ("changes", Number(Job.Room.AirChangesPerHour)), ("air", Celsius(Job.Room.Air.Celsius)),
    ];

    /// <summary>The coldest and the hottest point of a sheet, as its law takes them.</summary>
    private IEnumerable<(string, string?)> Points(IReadOnlyList<TimeAt> points)
    {
        if (points.Count == 0) return [];
        var (cold, hot) = (points.MinBy(p => p.Celsius)!, points.MaxBy(p => p.Celsius)!);
        return points.Count == 1
            ? [("time", Time(cold.Seconds)), ("at", Celsius(cold.Celsius))]
            : [("time", Time(cold.Seconds)), ("at", Celsius(cold.Celsius)), ("time2", Time(hot.Seconds)), ("at2", Celsius(hot.Celsius))];
    }

    // Nine figures: what was entered in these units comes back as it was, and nothing that counts is cut.
    private static string Number(double value) => value.ToString("G9", CultureInfo.InvariantCulture) is var text && text.Contains('E', StringComparison.Ordinal) ? value.ToString("0.############", CultureInfo.InvariantCulture) : text;

    private string Celsius(double c) => IsUs ? $"{Number((c * Factors.FahrenheitPerKelvin) + Factors.FahrenheitAtFreezing)} °F" : $"{Number(c)} °C";

    private string Kelvin(double k) => IsUs ? $"{Number(k * Factors.FahrenheitPerKelvin)} °F" : $"{Number(k)} °C";

    private string Film(double um) => IsUs ? $"{Number(um / Factors.MicrometresPerMil)} mil" : $"{Number(um)} µm";

    private string Length(double m) => IsUs ? $"{Number(m / Factors.MetresPerInch)} in" : $"{Number(m * 1000)} mm";

    private string Area(double m2) => IsUs ? $"{Number(m2 / Factors.SquareMetresPerSquareFoot)} ft²" : $"{Number(m2)} m²";

    private string Volume(double ml) => IsUs ? $"{Number(ml / Factors.MlPerUsFluidOunce)} fl oz" : $"{Number(ml)} mL";

    private string Mass(double g) => IsUs ? $"{Number(g / Factors.GramsPerOunce)} oz" : $"{Number(g)} g";

    private static string Density(double gPerMl) => $"{Number(gPerMl)} g/mL";

    private static string GPerL(double gPerL) => $"{Number(gPerL)} g/L";

    private static string Share(double share) => $"{Number(share * 100)} %";

    private static string? Thinner(Coat coat) => coat.ThinnerFraction > 0 ? Share(coat.ThinnerFraction) : null;

    private static string Time(double s) => s % 3600 == 0 ? $"{Number(s / 3600)} h" : s % 60 == 0 ? $"{Number(s / 60)} min" : $"{Number(s)} s";
}
