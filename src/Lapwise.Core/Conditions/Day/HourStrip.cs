using System.Text.Json.Serialization;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Day;

/// <summary>May one coat in this hour.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<Verdict>))]
public enum Verdict
{
    Go,
    /// <summary>Outside the data sheet now, or too moist before the film is dry: another hour is better.</summary>
    Wait,
    /// <summary>Never: the top is too near the dew point.</summary>
    NoGo,
    /// <summary>No reading: nothing is said.</summary>
    Unknown,
}

/// <summary>One hour of the room.</summary>
/// <param name="Reasons">Every limit broken at any reading of the hour, hardest first; notes too.</param>
/// <param name="LeastDewMarginC">Null without a reading.</param>
public sealed record RoomHour(DateTime From, Verdict Verdict, double? CoolestC, double? WarmestC, double? MostHumidity, double? LeastDewMarginC, IReadOnlyList<Reason> Reasons);

/// <summary>A run of hours that are all go.</summary>
public sealed record GoodHours(DateTime From, DateTime To, double LeastDewMarginC)
{
    public bool IsAllDay => To - From >= TimeSpan.FromHours(24);

    /// <summary><c>8:00 am to 5:00 pm</c>, <c>de 8:00 a 17:00</c>.</summary>
    public string Hours(Voice v) => IsAllDay ? v.Say("all day", "todo el día") : v.Say($"{v.Hour(From)} to {v.Hour(To)}", $"de {v.Hour(From)} a {v.Hour(To)}");
}

/// <summary>A room hour by hour for one product, judged by its worst reading.</summary>
/// <param name="Best">The longest run of go; of equal ones that with the most dew margin. Null: there is none.</param>
public sealed record HourStrip(IReadOnlyList<RoomHour> Hours, GoodHours? Best, IReadOnlyList<Gap> Gaps)
{
    /// <summary>How long after coating the film must not be wetted, where the sheet gives no time to the touch. Common practice, no source.</summary>
    private const double WettableS = 4 * 3600;

    /// <summary>How long a film of this product must not be wetted.</summary>
    internal static double WetS(Product product) => product.DryToTouch?.Seconds ?? WettableS;

    /// <param name="start">First hour; cut to the full hour.</param>
    public static HourStrip Of(Product product, RoomRecord record, DateTime start, int hours = 24)
    {
        var first = start.Date.AddHours(start.Hour);
        var last = first.AddHours(hours);
        var wetS = WetS(product);
        var near = record.Readings.Where(r => r.At >= first && r.At < last.AddSeconds(wetS)).Select(r => new Judged(r, product)).ToList();
        var byHour = near.ToLookup(j => (int)Math.Floor((j.Reading.At - first).TotalHours));
        var strip = Enumerable.Range(0, hours).Select(h => Hour(first.AddHours(h), [.. byHour[h]], near, wetS)).ToList();
        return new HourStrip(strip, BestOf(strip), [.. record.Gaps().Where(g => g.To > first && g.From < last)]);
    }

    private static RoomHour Hour(DateTime from, IReadOnlyList<Judged> judged, IReadOnlyList<Judged> near, double wetS)
    {
        if (judged.Count == 0) return new RoomHour(from, Verdict.Unknown, null, null, null, null, [NoReading]);
        List<Reason> reasons = [.. judged.SelectMany(j => j.Reasons).OrderBy(r => r.Limit).DistinctBy(r => r.Code)];
        var hardest = reasons.Count == 0 ? Limit.Note : reasons[0].Limit;
        var until = from.AddHours(1).AddSeconds(wetS);
        if (hardest is not Limit.Never && near.FirstOrDefault(j => j.Reading.At >= from.AddHours(1) && j.Reading.At < until && j.IsWetted) is { } wetted)
        {
            reasons.Insert(0, WettedLater(wetted.Reading.At));
            hardest = Limit.AtYourWord;
        }

        return new RoomHour(
            from,
            hardest switch { Limit.Never => Verdict.NoGo, Limit.AtYourWord => Verdict.Wait, _ => Verdict.Go },
            judged.Min(j => j.Reading.AirC), judged.Max(j => j.Reading.AirC), judged.Max(j => j.Reading.Humidity), judged.Min(j => j.DewMarginC),
            reasons);
    }

    private static readonly Reason NoReading = new("NoReading", Limit.Note,
        v => v.Say("No reading in this hour: nothing is known of it.", "No hay lecturas en esta hora: no se sabe nada de ella."),
        v => v.Say("Measure before you coat.", "Mida antes de aplicar."));

    private static Reason WettedLater(DateTime at) => new("DewBeforeDry", Limit.AtYourWord,
        v => v.Say($"At {v.Hour(at)} the top comes too near the dew point, before this film is dry.", $"A las {v.Hour(at)} la cubierta se acerca demasiado al punto de rocío, antes de que esta película seque."),
        v => v.Say("Coat earlier, or keep the room warm and dry until it is dry to the touch.", "Aplique antes, o mantenga la sala caliente y seca hasta que esté seca al tacto."));

    private static GoodHours? BestOf(IReadOnlyList<RoomHour> strip)
    {
        GoodHours? best = null;
        for (var i = 0; i < strip.Count; i++)
        {
            if (strip[i].Verdict is not Verdict.Go || (i > 0 && strip[i - 1].Verdict is Verdict.Go)) continue;
            var run = strip.Skip(i).TakeWhile(h => h.Verdict is Verdict.Go).ToList();
            var found = new GoodHours(strip[i].From, strip[i].From.AddHours(run.Count), run.Min(h => h.LeastDewMarginC!.Value));
            if (best is null || (found.To - found.From, found.LeastDewMarginC).CompareTo((best.To - best.From, best.LeastDewMarginC)) > 0) best = found;
        }

        return best;
    }

    public static string Say(Verdict verdict, Voice v) => verdict switch
    {
        Verdict.Go => v.Say("go", "adelante"),
        Verdict.Wait => v.Say("wait", "espere"),
        Verdict.NoGo => v.Say("no go", "no"),
        Verdict.Unknown => v.Say("no reading", "sin lectura"),
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, null),
    };

    /// <summary>The waits after a coat that ends at a time, through the readings that follow; a gap ends what is known.</summary>
    public static IReadOnlyList<Wait> WaitsAfter(Product product, RoomRecord record, DateTime end) =>
        CourseAfter(record, end) is { Count: > 0 } course ? Waits.Of(product, course) : [];

    /// <summary>Temperatures of the top from a time on, as far as the readings go without a gap.</summary>
    public static IReadOnlyList<TemperatureAt> CourseAfter(RoomRecord record, DateTime end)
    {
        var longest = record.LongestBridgedS;
        List<TemperatureAt> course = [];
        foreach (var reading in record.Readings)
        {
            if (reading.At < end) continue;
            if (course.Count > 0 && reading.ElapsedS - course[^1].Seconds > longest) break;
            course.Add(new TemperatureAt(reading.ElapsedS, reading.SurfaceC ?? reading.AirC));
        }

        return course;
    }

    /// <summary>One reading against the product's limits.</summary>
    private sealed class Judged
    {
        public Judged(RoomReading reading, Product product)
        {
            var room = reading.Room;
            var dewPointC = Dew.PointC(reading.AirC, reading.Humidity);
            (Reading, DewMarginC, Reasons) = (reading, room.Surface.Celsius - dewPointC, [.. RoomLimits.Of(product, room, dewPointC)]);
        }

        public RoomReading Reading { get; }
        public double DewMarginC { get; }
        public IReadOnlyList<Reason> Reasons { get; }
        public bool IsWetted => Reasons.Any(r => r.Limit is Limit.Never);
    }
}
