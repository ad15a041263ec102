using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.OnSite;

/// <summary>
/// The room a plan was made for, and how its times follow a reading. Each quantity is followed by itself, the others as
/// planned, and what several readings do is multiplied: between evaporation's air and surface that is near and not exact.
/// </summary>
public sealed record IssuedRoom
{
    /// <summary>Air, °C.</summary>
    public double AirC { get; set; }
    /// <summary>Relative humidity, 0 to 1.</summary>
    public double Humidity { get; set; }
    /// <summary>Surface of the tops, °C.</summary>
    public double SurfaceC { get; set; }
    /// <summary>Material in its cans, °C.</summary>
    public double MaterialC { get; set; }
    /// <summary>Least that the surface must lie above the dew point, K.</summary>
    public double DewMarginK { get; set; }
    /// <summary>How the times follow, by quantity and rising value.</summary>
    public IReadOnlyList<IssuedFollowing> Follows { get; set; } = [];
}

/// <summary>The times at one value of one quantity, against those of the plan.</summary>
public sealed record IssuedFollowing
{
    /// <summary>What is read: <c>air</c>, <c>humidity</c>, <c>surface</c>, <c>material</c>.</summary>
    public string Of { get; set; } = "";
    /// <summary>°C, or a share.</summary>
    public double Value { get; set; }
    /// <summary>Open time against the plan's; 1: the same.</summary>
    public double Open { get; set; } = 1;
    /// <summary>Pot life against the plan's; 1: the same.</summary>
    public double Pot { get; set; } = 1;
}

/// <summary>From a time on, the room is so.</summary>
/// <param name="AtMs">When it was read.</param>
/// <param name="Open">Open time against the plan's.</param>
/// <param name="Pot">Pot life against the plan's.</param>
/// <param name="DewMarginK">Surface above the dew point.</param>
public sealed record RoomRead(long AtMs, double Open, double Pot, double DewMarginK);

/// <summary>Lets the times of a run follow what is read on site.</summary>
public static class RoomFollowing
{
    private const double StepK = 2;
    private const double MostK = 20;

    /// <summary>Frozen with the plan, so that a phone without the job can follow a reading.</summary>
    internal static IssuedRoom Issue(Coat coat, Room room)
    {
        // A test board tells today's open time; how it goes with the room only the sheet says.
        var bySheet = coat with { TestBoard = null, TestBoardFirstBadS = null };
        var follows = new List<IssuedFollowing>();
        for (var k = -MostK; k <= MostK; k += StepK)
        {
            Add("air", room.Air.Celsius + k, room with { Air = new AirTemperature(room.Air.Celsius + k) });
            Add("surface", room.Surface.Celsius + k, room with { Surface = new SurfaceTemperature(room.Surface.Celsius + k) });
            Add("material", room.Material.Celsius + k, room with { Material = new MaterialTemperature(room.Material.Celsius + k) });
        }
        for (var percent = 5; percent <= 95; percent += 5) Add("humidity", percent / 100.0, room with { RelativeHumidity = percent / 100.0 });

        return new IssuedRoom
        {
            AirC = room.Air.Celsius, Humidity = room.RelativeHumidity, SurfaceC = room.Surface.Celsius, MaterialC = room.Material.Celsius,
            DewMarginK = coat.Product.Limits.DewMarginC,
            Follows = [.. follows.OrderBy(f => f.Of, StringComparer.Ordinal).ThenBy(f => f.Value)],
        };

        void Add(string of, double value, Room other)
        {
            var open = Clocks.OpenTimeOf(bySheet, other).Time.Seconds / Clocks.OpenTimeOf(bySheet, room).Time.Seconds;
            var pot = Clocks.PotLifeOf(bySheet, other, null).Time.Seconds / Clocks.PotLifeOf(bySheet, room, null).Time.Seconds;
            if (double.IsFinite(open) && double.IsFinite(pot)) follows.Add(new IssuedFollowing { Of = of, Value = value, Open = open, Pot = pot });
        }
    }

    /// <summary>The room from each reading on, in the order of time.</summary>
    internal static IReadOnlyList<RoomRead> Read(IssuedPlan plan, IEnumerable<(What.Reading What, long AtMs)> readings)
    {
        if (plan.Room is not { } room) return [];
        var now = new Dictionary<string, double>(StringComparer.Ordinal) { ["air"] = room.AirC, ["humidity"] = room.Humidity, ["surface"] = room.SurfaceC, ["material"] = room.MaterialC };
        var read = new List<RoomRead>();
        foreach (var (what, atMs) in readings.Where(r => now.ContainsKey(r.What.Quantity)).OrderBy(r => r.AtMs))
        {
            now[what.Quantity] = what.Value;
            var (open, pot) = (1.0, 1.0);
            foreach (var (of, value) in now)
            {
                open *= At(room, of, value, f => f.Open);
                pot *= At(room, of, value, f => f.Pot);
            }
            read.Add(new RoomRead(atMs, open, pot, now["surface"] - Dew.PointC(now["air"], Math.Clamp(now["humidity"], 0, 1))));
        }
        return read;
    }

    /// <summary>What a reading changed, for those who work by it.</summary>
    /// <param name="before">The run without it.</param>
    public static IReadOnlyList<Phrase> Told(Run before, Run after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (after.Room.Count == 0 || after.Room.SequenceEqual(before.Room)) return [];
        var told = new List<Phrase>();
        var (openWas, open, potWas, pot) = (before.OpenTimeMs, after.OpenTimeMs, before.PotLifeMs, after.PotLifeMs);
        if (openWas / 1000 != open / 1000)
            told.Add(v => v.Say($"In this room the film stays open {Voice.Span(open / 1000)}; so far {Voice.Span(openWas / 1000)} counted. What is wet ages by it from now on.", $"En esta sala la película queda abierta {Voice.Span(open / 1000)}; hasta ahora se contaban {Voice.Span(openWas / 1000)}. Lo húmedo envejece así desde ahora."));
        if (potWas / 1000 != pot / 1000)
            told.Add(v => v.Say($"A batch lives {Voice.Span(pot / 1000)}; so far {Voice.Span(potWas / 1000)} counted.", $"Una mezcla vive {Voice.Span(pot / 1000)}; hasta ahora se contaban {Voice.Span(potWas / 1000)}."));
        var (margin, least) = (after.Room[^1].DewMarginK, after.Plan.Room!.DewMarginK);
        if (margin < least)
            told.Add(v => v.Say($"✗ The top is only {v.TemperatureDifference(margin)} above the dew point; the data sheet asks for {v.TemperatureDifference(least)}. Begin no further section: warm the room or dry the air first.", $"✗ La cubierta está solo {v.TemperatureDifference(margin)} sobre el punto de rocío; la ficha pide {v.TemperatureDifference(least)}. No empiece otra sección: antes caliente la sala o seque el aire."));
        if (told.Count == 0) told.Add(v => v.Say("This reading changes neither open time nor pot life.", "Esta lectura no cambia ni el tiempo abierto ni la vida de la mezcla."));
        return told;
    }

    /// <summary>Between two values the logarithm goes straight, as it does by the law of temperature; beyond the last it stays.</summary>
    private static double At(IssuedRoom room, string of, double value, Func<IssuedFollowing, double> share)
    {
        var points = room.Follows.Where(f => f.Of == of).ToList();
        if (points.Count == 0) return 1;
        var above = points.FindIndex(p => p.Value >= value);
        if (above <= 0) return share(points[above < 0 ? ^1 : 0]);
        var (low, high) = (points[above - 1], points[above]);
        var part = (value - low.Value) / (high.Value - low.Value);
        return Math.Exp(((1 - part) * Math.Log(share(low))) + (part * Math.Log(share(high))));
    }
}
