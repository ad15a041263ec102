using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Conditions.Drying;

/// <summary>
/// How one coat dries in a room: the two stages in which water leaves it, and the waits of its sheet. The water's own times
/// are of an open film of no skin in still or moving air, an estimate of size and not a time to recoat by.
/// </summary>
/// <param name="Water">Null: no water leaves it, or the sheet as entered does not say.</param>
/// <param name="AtHalfHumidity">The same film at 50 % humidity, to show what humidity does; null as above.</param>
public sealed record CoatDrying(Coat Coat, WaterDrying? Water, WaterDrying? AtHalfHumidity, IReadOnlyList<Wait> Waits, Basis? WaterBasis)
{
    /// <summary>What is left when a film counts as dry here: a twentieth of its water.</summary>
    public const double DryShare = 0.05;

    private const int CurvePoints = 60;

    public static CoatDrying Of(Coat coat, Room room, IReadOnlyList<TemperatureAt> course, bool holdsLast)
    {
        var waits = Drying.Waits.Of(coat.Product, course, holdsLast);
        if (coat.Product.Drying is not { Carrier: Carrier.Water }) return new CoatDrying(coat, null, null, waits, null);
        var solids = Film.ThinnedSolids(coat.Product.VolumeSolids, coat.ThinnerFraction);
        var transfer = WaterDrying.StillAirMPerS * (room.AirMovement is AirMovement.Moving ? FilmClosing.MovingAir : 1);
        WaterDrying At(double humidity) => WaterDrying.Of(coat.WetFilm.Micrometres, solids, room.Surface.Celsius, room.Air.Celsius, humidity, transfer);
        var basis = new Basis("J = k M/(R T) (p_sat(T_s) − RH p_sat(T_a)); dw/dt = −(J₅₀/w_s) w",
        [
            new(v => v.Say("wet film", "película húmeda"), v => v.Film(coat.WetFilm.Micrometres)),
            new(v => v.Say("polymer in it, with the thinner", "polímero en ella, con el diluyente"), v => v.Percent(solids, 1)),
            new(v => v.Say("surface, air, humidity", "superficie, aire, humedad"), v => $"{v.Temperature(room.Surface.Celsius)}, {v.Temperature(room.Air.Celsius)}, {v.Percent(room.RelativeHumidity)}"),
            new(v => v.Say("transfer k (from memory: 2 to 5 mm/s in a still room)", "transferencia k (de memoria: de 2 a 5 mm/s en sala quieta)"), v => v.Number(transfer * 1000, 1) + " mm/s"),
            new(v => v.Say("the stages change where polymer fills", "las etapas cambian donde el polímero llena"), v => v.Percent(FilmClosing.SwitchShare)),
        ], Sources.FilmClosing);
        return new CoatDrying(coat, At(room.RelativeHumidity), At(0.5), waits, basis);
    }

    /// <summary>Seconds until a twentieth of the water is left; without end where the air gives water back.</summary>
    public double DriedS => Water?.SecondsUntil(DryShare) ?? double.NaN;

    /// <summary>Share of that time in the stage that humidity holds back.</summary>
    public double ShareHeldByHumidity => Water is { } water && double.IsFinite(DriedS) ? Math.Min(1, water.ConstantRateS / DriedS) : double.NaN;

    /// <summary>Water left, share of the first, at quarters of the constant-rate stage and of the falling-rate stage.</summary>
    public IReadOnlyList<(double Seconds, double Share)> Curve => Water is not { } water || !double.IsFinite(DriedS) ? [] :
        [.. Enumerable.Range(0, 9).Select(i => i <= 4 ? water.ConstantRateS * i / 4 : water.ConstantRateS + ((DriedS - water.ConstantRateS) * (i - 4) / 4)).Distinct().Select(s => (s, water.LeftAt(s) / water.WaterGPerM2))];

    /// <summary>The water left over time, with the place where the stages change; null where none leaves, or none can.</summary>
    public Curve? WaterCurve => Water is not { } water || !double.IsFinite(DriedS) ? null : new Curve(
        v => v.Say("Water left in the film", "Agua que queda en la película"), v => v.Say("since it was rolled", "desde que se aplicó"), (_, x) => Voice.Span(Math.Round(x)),
        CurveLine.Share(v => v.Say("water left", "agua que queda"), [.. Enumerable.Range(0, CurvePoints + 1).Select(i => DriedS * i / CurvePoints).Append(Math.Min(water.ConstantRateS, DriedS)).Order().Distinct().Select(s => (s, water.LeftAt(s) / water.WaterGPerM2))]))
    {
        Marks =
        [
            .. water.ConstantRateS > 0 && water.ConstantRateS < DriedS ? [new CurveMark(water.ConstantRateS, v => v.Say("constant rate ends, falling rate begins", "acaba la velocidad constante, empieza la decreciente"))] : Array.Empty<CurveMark>(),
        ],
    };

    /// <summary>How the water leaves it, in a sentence; null: the sheet as entered says of no water.</summary>
    public Phrase? WaterLine => Water is not { } water || AtHalfHumidity is not { } half ? null
        : !double.IsFinite(DriedS)
            ? v => v.Say("✗ In this room the air gives water back to the film: it does not dry.", "✗ En esta sala el aire devuelve agua a la película: no seca.")
            : v => v.Say($"Water leaves it in about {Voice.Span(DriedS)}: at a constant rate for {Voice.Span(water.ConstantRateS)} ({Voice.Span(half.ConstantRateS)} at 50 % humidity), then at a falling rate that humidity hardly touches. {v.Percent(ShareHeldByHumidity)} of the time is held by humidity.",
                $"El agua la deja en unos {Voice.Span(DriedS)}: a velocidad constante durante {Voice.Span(water.ConstantRateS)} ({Voice.Span(half.ConstantRateS)} con 50 % de humedad), luego a velocidad decreciente que la humedad apenas afecta. El {v.Percent(ShareHeldByHumidity)} del tiempo depende de la humedad.");

    public static string NotATimeToRecoat(Voice v) =>
        v.Say("An estimate of size for an open film, not a time to recoat by: that is the sheet's.", "Una estimación de orden de magnitud para una película abierta, no un tiempo de repintado: ese es el de la ficha.");

    /// <summary>The stage a wait of the sheet is named for in the standards; null: the standards name none.</summary>
    public static DryStage? StageOf(WaitFor what) => what switch
    {
        WaitFor.DryToTouch => DryStages.All.Single(s => s.Id == "dry-to-touch"),
        WaitFor.EarliestRecoat => DryStages.All.Single(s => s.Id == "dry-to-recoat"),
        _ => null,
    };
}
