using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>
/// Reads the fields of a document one by one and keeps every fault. A field that cannot be read gives NaN, so that
/// reading goes on and says the next fault too; whoever builds a record asks <see cref="Count"/> whether it may.
/// </summary>
/// <param name="units">What a bare number means; null: every unit must be said.</param>
internal sealed class Fields(UnitSystem? units)
{
    private readonly List<Fault> _faults = [];

    public IReadOnlyList<Fault> Faults => _faults;

    public int Count => _faults.Count;

    public void Add(string path, string code, Phrase text, Phrase cure) => _faults.Add(new Fault(path, code, text, cure));

    public void AddRange(IEnumerable<Fault> faults) => _faults.AddRange(faults);

    public double Length(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Length(entry ?? default, units), bounds);

    public double Film(string path, Entry? entry) => Within(path, entry, Reading.Film(entry ?? default, units), Ranges.Film);

    /// <summary>Millilitres; its unit is always said, for no one thinks of a room in fluid ounces.</summary>
    public double RoomVolume(string path, Entry? entry) => Within(path, entry, Reading.Volume(entry ?? default, null), Ranges.RoomVolume);

    public double Roughness(string path, Entry? entry) => Within(path, entry, Reading.Film(entry ?? default, units), Ranges.Roughness);

    public double Area(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Area(entry ?? default, units), bounds);

    public double Volume(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Volume(entry ?? default, units), bounds);

    public double Mass(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Mass(entry ?? default, units), bounds);

    public double Density(string path, Entry? entry) => Within(path, entry, Reading.Density(entry ?? default), Ranges.Density);

    public double HeatOfMix(string path, Entry? entry) => Within(path, entry, Reading.HeatPerMass(entry ?? default), Ranges.HeatOfMix);

    public double Temperature(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Temperature(entry ?? default, units), bounds);

    public double TemperatureDifference(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.TemperatureDifference(entry ?? default, units), bounds);

    public double Share(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Share(entry ?? default), bounds);

    public double Humidity(string path, Entry? entry) => Within(path, entry, Reading.Humidity(entry ?? default), Ranges.Humidity);

    public double Time(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Time(entry ?? default), bounds);

    public double AreaRate(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.AreaRate(entry ?? default), bounds);

    public double LengthRate(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.LengthRate(entry ?? default), bounds);

    /// <summary>Grams in a millilitre of something thin; 0 may stand.</summary>
    public double Concentration(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Density(entry ?? default), bounds);

    public double Number(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Number(entry ?? default), bounds);

    public double Turn(string path, Entry? entry) => Within(path, entry, Reading.Turn(entry ?? default), Ranges.TurnRadians);

    public double Angle(string path, Entry? entry, Bounds bounds) => Within(path, entry, Reading.Angle(entry ?? default), bounds);

    /// <summary>A day as <c>2026-11-25</c> (ISO 8601); a default day where it cannot be read.</summary>
    public DateOnly Day(string path, string? day)
    {
        if (DateOnly.TryParseExact((day ?? "").Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var read)) return read;
        Add(path, "DayNotRead",
            v => v.Say($"{Misreads.Quote(v, day ?? "")} is not a day.", $"{Misreads.Quote(v, day ?? "")} no es un día."),
            v => v.Say("Write year, month and day, such as 2026-11-25.", "Escriba año, mes y día, como 2026-11-25."));
        return default;
    }

    /// <summary>A day that may be left out.</summary>
    public DateOnly? DayOrNull(string path, string? day) => string.IsNullOrWhiteSpace(day) ? null : Day(path, day);

    /// <summary>Money in the shop's currency; zero where it cannot be read.</summary>
    public MoneyAmount Money(string path, Entry? entry, Currency currency, bool mayBeNegative = false)
    {
        if (!MoneyReading.Money(entry ?? default, currency).Failed(out var why, out var amount) && (mayBeNegative || amount.Value >= 0)) return amount;
        if (why is null)
        {
            Add(path, "PriceNegative",
                v => v.Say($"{Misreads.Quote(v, entry?.Text ?? "")} is below zero.", $"{Misreads.Quote(v, entry?.Text ?? "")} es menor que cero."),
                v => v.Say("Enter zero or more.", "Escriba cero o más."));
        }
        else
        {
            Add(path, why.Code, why.Text, why.Cure);
        }

        return MoneyAmount.Zero(currency);
    }

    /// <summary>A field that may be left out: null or blank takes the default.</summary>
    public static double Or(Entry? entry, Assumption left, Func<Entry, double> read) => entry is { IsBlank: false } said ? read(said) : left.Value;

    /// <summary>A field that may be left out: null or blank takes the value.</summary>
    public static double Or(Entry? entry, double left, Func<Entry, double> read) => entry is { IsBlank: false } said ? read(said) : left;

    /// <summary>A field that may be left out and has no default.</summary>
    public static double? OrNull(Entry? entry, Func<Entry, double> read) => entry is { IsBlank: false } said ? read(said) : null;

    /// <summary>A name that a person reads; blank is a fault.</summary>
    public string Name(string path, string? name)
    {
        if (!string.IsNullOrWhiteSpace(name)) return name.Trim();
        Add(path, "NameMissing",
            v => v.Say("No name is given.", "No hay nombre."),
            v => v.Say("Give it a name to be known by.", "Póngale un nombre para reconocerlo."));
        return "";
    }

    /// <summary>A name that tells this one apart from those before it, on sheets and screens.</summary>
    public string UniqueName(string path, string? entered, HashSet<string> before)
    {
        var name = Name(path, entered);
        if (name.Length > 0 && !before.Add(name))
        {
            Add(path, "NameTwice",
                v => v.Say($"The name {Misreads.Quote(v, name)} is used twice.", $"El nombre {Misreads.Quote(v, name)} se usa dos veces."),
                v => v.Say("Give each its own name.", "Dé a cada uno su propio nombre."));
        }

        return name;
    }

    /// <summary>For <see cref="UniqueName"/>: names that differ only in case are the same to an ear.</summary>
    public static HashSet<string> NoNames() => new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The items of a list with their paths. An empty place in it is a fault, and so is more than any job has.</summary>
    public IEnumerable<(T Item, string Path)> Items<T>(string path, IReadOnlyList<T?>? list, int most) where T : class
    {
        var count = list?.Count ?? 0;
        if (count > most) TooMany(path, count, most);
        for (var i = 0; i < Math.Min(count, most); i++)
        {
            if (list![i] is { } item) yield return (item, $"{path}[{i}]");
            else EmptyPlace($"{path}[{i}]");
        }
    }

    /// <summary>Two limits that must stand in order; NaN has been said already.</summary>
    public void InOrder(string path, double least, double most, Func<Voice, double, string> show)
    {
        if (!(least > most)) return;
        Add(path, "LeastOverMost",
            v => v.Say($"The least, {show(v, least)}, is over the most, {show(v, most)}.", $"El mínimo, {show(v, least)}, supera al máximo, {show(v, most)}."),
            v => v.Say("Put the smaller one first.", "Ponga primero el menor."));
    }

    private void EmptyPlace(string path) => Add(path, "EmptyPlace",
        v => v.Say("This place in the list is empty.", "Este lugar de la lista está vacío."),
        v => v.Say("Fill it in or take it out.", "Complételo o quítelo."));

    public void TooMany(string path, int count, int most) => Add(path, "TooMany",
        v => v.Say($"There are {count} here; at most {most} are read.", $"Aquí hay {count}; se leen como mucho {most}."),
        v => v.Say("Take some out, or split the job in two.", "Quite algunos, o divida el trabajo en dos."));

    private double Within(string path, Entry? entry, Read<double> read, Bounds bounds)
    {
        if (!read.Failed(out var why, out var value)) why = bounds.Check(value, entry ?? default);
        if (why is null) return value;
        Add(path, why.Code, why.Text, why.Cure);
        return double.NaN;
    }
}
