using System.Globalization;
using System.Text;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Conditions.Day;

/// <summary>What the text of a logger or a typed forecast gave.</summary>
/// <param name="Record">Null where nothing can be used.</param>
/// <param name="Notes">What was set right or left out, each with its count and first line.</param>
public sealed record LoggerRead(RoomRecord? Record, IReadOnlyList<Fault> Faults, IReadOnlyList<Reason> Notes);

/// <summary>
/// Reads lines of time, temperature and humidity: a logger's CSV with headings in English or Spanish, separated by comma,
/// semicolon or tab, or a typed forecast such as <c>08:00 64 °F 55 %</c>. Units come from the heading or the values and are
/// never guessed from their size; sizes only raise a doubt.
/// </summary>
public static class LoggerText
{
    /// <summary>A year at one reading a minute has 525,600.</summary>
    public const int MostRows = 1_000_000;

    private const int MostFaults = 5;

    /// <summary>Text of a logger's file, whose letters are UTF-8 or the old single-byte ones.</summary>
    public static string TextOf(byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }

    /// <param name="day">The day of lines that only give an hour.</param>
    /// <param name="units">Settles a date such as 03/04, where the whole text leaves it open.</param>
    public static LoggerRead Read(string text, DateTime day, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new Reader(day, units).Read(text);
    }

    /// <summary>The end of a long text, with its headings: as much as the last hours take, for a page that shows but the last day.</summary>
    /// <param name="Lines">Of the whole text.</param>
    /// <param name="Kept">Of the readings at its end.</param>
    public sealed record Ending(string Text, int Lines, int Kept);

    // Looking at one line in so many is near enough, and quick where a page is.
    private const int Stride = 50;
    private const int Samples = 400;
    private const int MostEndingLines = 20_000;

    /// <summary>What the last hours of a text are, as written; null where it has no heading with a time, or its last line no date: then it is taken whole.</summary>
    public static Ending? EndingOf(string text, double hours)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new Reader(default, UnitSystem.Us).EndingOf(text, hours);
    }

    private enum Holds { Nothing, Time, Date, Air, Humidity, Surface, Dew }

    private sealed record Row(int Line, string Time, double AirRaw, double Humidity, double? SurfaceRaw);

    private sealed class Reader(DateTime day, UnitSystem units)
    {
        private readonly List<Fault> _faults = [];
        private readonly List<Reason> _notes = [];
        private readonly List<Row> _rows = [];
        private char _between;
        private Holds[] _columns = [];
        private bool? _fahrenheit;
        private bool _shares;
        private int _missing;
        private int _firstMissing;
        private int _impossible;
        private (int Line, Phrase Why) _firstImpossible;

        public LoggerRead Read(string text)
        {
            if (text.AsSpan().Count('\n') is var rows and > MostRows)
            {
                TooManyRows(rows);
                return new LoggerRead(null, _faults, _notes);
            }

            var line = 0;
            foreach (var span in text.AsSpan().EnumerateLines())
            {
                line++;
                var written = span.Trim().Trim('\uFEFF');
                if (written.IsEmpty) continue;
                if (_columns.Length == 0 && Heading(written.ToString())) continue;
                if (!HasDigit(written)) continue;
                if (_columns.Length > 0) FromColumns(line, written.ToString());
                else Typed(line, written.ToString());
                // What is wrong with how the whole text is written is said once.
                if (_faults.Count >= MostFaults || _faults.Any(f => f.Code is "DecimalCommasUnclear" or "UnitsMixed")) break;
            }

            if (_faults.Count == 0 && _rows.Count == 0) Nothing();
            if (_faults.Count == 0 && _fahrenheit is null) UnitMissing();
            if (_faults.Count == 0) DoubtSizes();
            return _faults.Count > 0 ? new LoggerRead(null, _faults, _notes) : Timed();
        }

        public Ending? EndingOf(string text, double hours)
        {
            var lines = text.Split('\n');
            var heading = Array.FindIndex(lines, l => Heading(l.Trim().Trim('\uFEFF')));
            var last = Array.FindLastIndex(lines, HasDigit);
            if (heading < 0 || last <= heading) return null;
            // Some lines all over the text settle which of day and month comes first, where any can only be read one way.
            var orders = Enumerable.Range(0, Samples).Select(i => lines[heading + 1 + (int)((long)(last - heading - 1) * i / Samples)])
                .Select(l => (Month: TimeOf(l, dayFirst: false) is not null, Day: TimeOf(l, dayFirst: true) is not null)).ToList();
            var dayFirst = orders.Exists(o => o is { Day: true, Month: false });
            var isSettled = dayFirst || orders.Exists(o => o is { Day: false, Month: true });
            if (TimeOf(lines[last], dayFirst) is not { } end) return null;
            var from = last;
            while (from - Stride > heading && last - from < MostEndingLines && (TimeOf(lines[from - Stride], dayFirst) is not { } at || Math.Abs((end - at).TotalHours) <= hours)) from -= Stride;
            var kept = lines[from..(last + 1)].Select(l => isSettled ? WithDateSpelt(l, dayFirst) : l);
            return new Ending(string.Join('\n', kept.Prepend(lines[heading])), lines.Length, last + 1 - from);
        }

        private readonly Dictionary<string, string> _spelt = new(StringComparer.Ordinal);

        /// <summary>What the whole text settled, its end alone may not: its dates are written so that they can be read one way only.</summary>
        private string WithDateSpelt(string line, bool dayFirst)
        {
            var end = 0;
            var start = line.AsSpan().IndexOfAnyInRange('0', '9');
            while (start >= 0 && start < line.Length)
            {
                for (end = start; end < line.Length && (char.IsAsciiDigit(line[end]) || line[end] is '/' or '.' or '-'); end++) { }
                var token = line[start..end];
                if (token.Count(c => c is '/' or '.' or '-') == 2)
                {
                    if (!_spelt.TryGetValue(token, out var spelt)) _spelt[token] = spelt = TimeOf(line, dayFirst) is { } at ? $"{at:yyyy-MM-dd}" : token;
                    return string.Concat(line.AsSpan(0, start), spelt, line.AsSpan(end));
                }

                var next = line.AsSpan(Math.Min(line.Length, end + 1)).IndexOfAnyInRange('0', '9');
                start = next < 0 ? -1 : end + 1 + next;
            }

            return line;
        }

        private DateTime? TimeOf(string line, bool dayFirst)
        {
            var fields = Split(line.Trim(), _between);
            string Field(Holds what) => Array.IndexOf(_columns, what) is >= 0 and var i && i < fields.Count ? fields[i] : "";
            var written = $"{Field(Holds.Date)} {Field(Holds.Time)}".Trim();
            return new WallClock(DateTime.MinValue, dayFirst).Next(written)?.At is { Year: > 1 } at ? at : null;
        }

        private static bool HasDigit(string line) => HasDigit(line.AsSpan());

        private static bool HasDigit(ReadOnlySpan<char> line) => line.IndexOfAnyInRange('0', '9') >= 0;

        private bool Heading(string line)
        {
            if (!LooksLikeHeading(line)) return false;
            _between = new[] { ';', '\t', ',' }.MaxBy(c => line.Count(x => x == c));
            var names = Split(line, _between);
            var columns = names.Select(Meaning).ToArray();
            if (!columns.Contains(Holds.Air) || !(columns.Contains(Holds.Time) || columns.Contains(Holds.Date))) return false;

            // Of two temperatures of the air, as of two probes, the first is taken.
            var air = Array.IndexOf(columns, Holds.Air);
            for (var i = air + 1; i < columns.Length; i++) if (columns[i] is Holds.Air) columns[i] = Holds.Nothing;
            if (!columns.Contains(Holds.Humidity)) HumidityMissing();
            _columns = columns;
            _fahrenheit = Unit(names[air]);
            return true;
        }

        private static bool LooksLikeHeading(string line) => Plain(line) is var plain && new[] { "temp", "air", "aire" }.Any(plain.Contains) && line.Count(char.IsLetter) > line.Count(char.IsDigit);

        private static Holds Meaning(string name)
        {
            var plain = Plain(name);
            bool Has(params string[] words) => words.Any(w => plain.Contains(w, StringComparison.Ordinal));
            return Has("dew", "rocio") ? Holds.Dew
                : Has("battery", "bateria", "serial", "serie") ? Holds.Nothing
                : Has("surface", "superficie", "cubierta") ? Holds.Surface
                : Has("hum", "rh", "%", "hr ") || plain is "hr" ? Holds.Humidity
                : Has("temp", "air") ? Holds.Air
                : Has("date", "fecha", "timestamp") ? Has("time", "hora") ? Holds.Time : Holds.Date
                : Has("time", "hora") ? Holds.Time
                : Holds.Nothing;
        }

        private static bool? Unit(string text) => Plain(text) is var plain && (plain.Contains("°f", StringComparison.Ordinal) || plain.Contains("fahrenheit", StringComparison.Ordinal) || plain.Contains("(f)", StringComparison.Ordinal) || plain.EndsWith(" f", StringComparison.Ordinal)) ? true
            : plain.Contains("°c", StringComparison.Ordinal) || plain.Contains("celsius", StringComparison.Ordinal) || plain.Contains("(c)", StringComparison.Ordinal) || plain.EndsWith(" c", StringComparison.Ordinal) ? false
            : null;

        /// <summary>Small letters without accents; º and the one-character degree signs as °.</summary>
        private static string Plain(string text) => text.ToLowerInvariant().Trim('"', ' ')
            .Replace('á', 'a').Replace('é', 'e').Replace('í', 'i').Replace('ó', 'o').Replace('ú', 'u')
            .Replace('º', '°').Replace("℃", "°c", StringComparison.Ordinal).Replace("℉", "°f", StringComparison.Ordinal).Replace("° ", "°", StringComparison.Ordinal);

        private static List<string> Split(string line, char between)
        {
            var (fields, start, quoted) = (new List<string>(), 0, false);
            for (var i = 0; i <= line.Length; i++)
            {
                if (i < line.Length && line[i] == '"') quoted = !quoted;
                if (i < line.Length && (quoted || line[i] != between)) continue;
                fields.Add(line[start..i].Trim().Trim('"').Trim());
                start = i + 1;
            }

            return fields;
        }

        private void FromColumns(int line, string written)
        {
            var fields = Split(written, _between);
            if (fields.Count > _columns.Length && _between == ',' && fields.Skip(_columns.Length).Any(f => f.Length > 0))
            {
                DecimalCommas(line, fields.Count);
                return;
            }

            string Field(Holds what) => Array.IndexOf(_columns, what) is >= 0 and var i && i < fields.Count ? fields[i] : "";
            var time = $"{Field(Holds.Date)} {Field(Holds.Time)}".Trim();
            var (air, humidity) = (Number(Field(Holds.Air)), Number(Field(Holds.Humidity)));
            if (time.Length == 0) TimeUnclear(line, written);
            else if (Number(Field(Holds.Dew)) > air + DewSlack) Impossible(line, v => v.Say($"a dew point of {Field(Holds.Dew)} above an air temperature of {Field(Holds.Air)}", $"un punto de rocío de {Field(Holds.Dew)} por encima de un aire a {Field(Holds.Air)}"));
            else if (air is { } a && humidity is { } h) Keep(new Row(line, time, a, h, Number(Field(Holds.Surface))));
            else Missed(line);
            if (_fahrenheit is null && Unit(" " + Field(Holds.Air)) is { } said) _fahrenheit = said;
        }

        /// <summary>A line as one types it: the time, then values told apart by their units.</summary>
        private void Typed(int line, string written)
        {
            var words = written.Replace("° ", "°", StringComparison.Ordinal).Split([' ', '\t', ';'], StringSplitOptions.RemoveEmptyEntries);
            var times = words.TakeWhile(w => w.Contains(':', StringComparison.Ordinal) || w.Count(c => c is '-' or '/') == 2 || (w.Count(c => c is '.') == 2 && char.IsAsciiDigit(w[0])) || Plain(w) is "am" or "pm" or "h").ToList();
            double? air = null, humidity = null;
            for (var i = times.Count; i < words.Length; i++)
            {
                var unit = i + 1 < words.Length && !HasDigit(words[i + 1]) ? words[i + 1] : words[i];
                var plain = Plain(unit);
                if (Number(words[i]) is not { } value) continue;
                if (plain.Contains('%', StringComparison.Ordinal)) humidity = value;
                else if (Unit(" " + plain) is { } fahrenheit)
                {
                    air ??= value;
                    if (_fahrenheit is { } before && before != fahrenheit) MixedUnits(line);
                    _fahrenheit = fahrenheit;
                }
                else if (plain.EndsWith('f') || plain.EndsWith('c')) (air, _fahrenheit) = (air ?? value, plain.EndsWith('f'));
                else air ??= value;
            }

            // A line before the heading may say anything: serial number, place, interval.
            if (times.Count == 0 && (air is null || humidity is null)) return;
            if (times.Count == 0) TimeUnclear(line, written);
            else if (air is { } a && humidity is { } h) Keep(new Row(line, string.Join(' ', times), a, h, null));
            else Missed(line);
        }

        /// <summary>A number with decimal point or comma, with or without its unit; null for what is none.</summary>
        private static double? Number(string field)
        {
            var end = 0;
            while (end < field.Length && (char.IsAsciiDigit(field[end]) || field[end] is '.' or ',' or '-' or '−' or '+')) end++;
            return double.TryParse(field[..end].Replace(',', '.').Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
        }

        private void Keep(Row row)
        {
            if (row.Humidity is < 0 or > 100.5) Impossible(row.Line, v => v.Say($"a humidity of {v.Number(row.Humidity, 1)} %", $"una humedad de {v.Number(row.Humidity, 1)} %"));
            else if (row.AirRaw is < -60 or > 160) Impossible(row.Line, v => v.Say($"a temperature of {v.Number(row.AirRaw, 1)}°", $"una temperatura de {v.Number(row.AirRaw, 1)}°"));
            else _rows.Add(row);
        }

        // Two rounded figures of saturated air may cross by this.
        private const double DewSlack = 0.5;

        private void Impossible(int line, Phrase why)
        {
            if (_impossible++ == 0) _firstImpossible = (line, why);
        }

        private void Missed(int line)
        {
            if (_missing++ == 0) _firstMissing = line;
        }

        private double Celsius(double raw) => _fahrenheit is true ? (raw - 32) / 1.8 : raw;

        private void DoubtSizes()
        {
            var middle = _rows.Select(r => r.AirRaw).Order().ElementAt(_rows.Count / 2);
            if (_fahrenheit is false && middle > 45) WrongUnit("°C", "°F", middle);
            if (_fahrenheit is true && middle < 40) WrongUnit("°F", "°C", middle);
            _shares = _rows.Count > 2 && _rows.All(r => r.Humidity <= 1);
            if (!_shares) return;
            _faults.Add(new Fault("humidity", "HumidityLooksLikeShare",
                v => v.Say($"Every humidity is 1 or less (largest {v.Number(_rows.Max(r => r.Humidity))}): these look like shares of one, not per cent.", $"Todas las humedades son 1 o menos (máxima {v.Number(_rows.Max(r => r.Humidity))}): parecen partes de uno, no porcentajes."),
                v => v.Say("Export humidity in per cent.", "Exporte la humedad en porcentaje.")));
        }

        private LoggerRead Timed()
        {
            if (_missing > 0)
            {
                _notes.Add(new Reason("LinesWithoutReading", Limit.Note,
                    v => v.Say($"Lines without a usable reading, left out: {_missing}; the first is line {_firstMissing}.", $"Líneas sin lectura utilizable, que se dejan fuera: {_missing}; la primera es la {_firstMissing}."),
                    v => v.Say("Hours without a reading are shown as such.", "Las horas sin lectura se muestran como tales.")));
            }

            if (_impossible > 0)
            {
                _notes.Add(new Reason("LinesImpossible", Limit.Note,
                    v => v.Say($"Lines that cannot be true, left out: {_impossible}; the first is line {_firstImpossible.Line}, with {_firstImpossible.Why(v)}.", $"Líneas que no pueden ser ciertas, que se dejan fuera: {_impossible}; la primera es la {_firstImpossible.Line}, con {_firstImpossible.Why(v)}."),
                    v => v.Say("Check the sensor; what it says beside may be wrong too.", "Revise el sensor; lo demás que dice también puede estar mal.")));
            }

            var clock = new WallClock(day, DayFirst());
            var readings = new List<RoomReading>(_rows.Count);
            foreach (var row in _rows)
            {
                if (clock.Next(row.Time) is not { } moment)
                {
                    TimeUnclear(row.Line, row.Time);
                    if (_faults.Count >= MostFaults) break;
                    continue;
                }

                readings.Add(new RoomReading(moment.At, moment.ElapsedS, Celsius(row.AirRaw), row.Humidity / 100, row.SurfaceRaw is { } s ? Celsius(s) : null));
            }

            if (_faults.Count > 0) return new LoggerRead(null, _faults, _notes);
            _notes.AddRange(clock.Notes());
            var record = new RoomRecord(readings);
            if (record.Gaps() is { Count: > 0 } gaps) _notes.Add(HasGaps(gaps));
            return new LoggerRead(record, [], _notes);
        }

        /// <summary>Day before month where any date of the text can only be read so; else by the working units, which is noted.</summary>
        private bool DayFirst()
        {
            var slashed = _rows.Select(r => r.Time.Split([' ', '/', '.', '-', 'T'], 3)).Where(p => p.Length > 2 && p[0].Length <= 2 && int.TryParse(p[0], CultureInfo.InvariantCulture, out _) && int.TryParse(p[1], CultureInfo.InvariantCulture, out _)).ToList();
            if (slashed.Count == 0) return false;
            if (slashed.Any(p => int.Parse(p[0], CultureInfo.InvariantCulture) > 12)) return true;
            if (slashed.Any(p => int.Parse(p[1], CultureInfo.InvariantCulture) > 12)) return false;
            var dayFirst = units is UnitSystem.Metric;
            _notes.Add(new Reason("DateOrderTaken", Limit.Note,
                v => dayFirst ? v.Say("Dates were read as day/month.", "Las fechas se leyeron como día/mes.") : v.Say("Dates were read as month/day.", "Las fechas se leyeron como mes/día."),
                v => v.Say("If that is wrong, export dates as 2026-11-25.", "Si no es así, exporte las fechas como 2026-11-25.")));
            return dayFirst;
        }

        private static Reason HasGaps(IReadOnlyList<Gap> gaps) => new("ReadingsHaveGaps", Limit.Note,
            v => v.Say($"Gaps without readings: {gaps.Count}; the longest is from {v.Moment(Longest(gaps).From)} to {v.Moment(Longest(gaps).To)}. A gap of one hour in spring may be the clock put forward.",
                $"Huecos sin lecturas: {gaps.Count}; el más largo va del {v.Moment(Longest(gaps).From)} al {v.Moment(Longest(gaps).To)}. Un hueco de una hora en primavera puede ser el cambio de hora."),
            v => v.Say("Gaps are not filled in: those hours stay unknown.", "Los huecos no se rellenan: esas horas quedan sin conocer."));

        private static Gap Longest(IReadOnlyList<Gap> gaps) => gaps.MaxBy(g => g.To - g.From);

        private void Add(string path, int? line, string code, Phrase text, Phrase cure) => _faults.Add(new Fault(path, code, text, cure) { Line = line });

        private void DecimalCommas(int line, int count) => Add("", line, "DecimalCommasUnclear",
            v => v.Say($"This line has {count} values under {_columns.Length} headings: decimal commas in a text separated by commas cannot be told apart.", $"Esta línea tiene {count} valores bajo {_columns.Length} títulos: no se distinguen las comas decimales en un texto separado por comas."),
            v => v.Say("Export with semicolons between values, or with decimal points.", "Exporte con punto y coma entre valores, o con punto decimal."));

        private void TimeUnclear(int line, string written) => Add("", line, "TimeUnclear",
            v => v.Say($"No time can be read from \"{written[..Math.Min(40, written.Length)]}\".", $"No se puede leer ninguna hora en «{written[..Math.Min(40, written.Length)]}»."),
            v => v.Say("Write times as 2026-11-25 14:30, or 14:30 for today.", "Escriba las horas como 2026-11-25 14:30, o 14:30 para hoy."));

        private void MixedUnits(int line) => Add("", line, "UnitsMixed",
            v => v.Say("°F and °C stand in the same text.", "Hay °F y °C en el mismo texto."),
            v => v.Say("Use one of them throughout.", "Use siempre el mismo."));

        private void WrongUnit(string said, string likely, double middle) => Add("temperature", null, "UnitDoubtful",
            v => v.Say($"The temperatures are said to be in {said}, but the middle one is {v.Number(middle, 1)}: that looks like {likely}.", $"Se dice que las temperaturas están en {said}, pero la central es {v.Number(middle, 1)}: parece {likely}."),
            v => v.Say("Correct the unit in the heading.", "Corrija la unidad en el título."));

        private void UnitMissing() => Add("temperature", null, "TemperatureUnitMissing",
            v => v.Say("The temperatures have no unit.", "Las temperaturas no tienen unidad."),
            v => v.Say("Write °F or °C in the heading or beside each value.", "Escriba °F o °C en el título o junto a cada valor."));

        private void HumidityMissing() => Add("humidity", null, "HumidityMissing",
            v => v.Say("There is no column of relative humidity.", "No hay columna de humedad relativa."),
            v => v.Say("Export humidity too; without it no dew point is known.", "Exporte también la humedad; sin ella no se conoce el punto de rocío."));

        private void Nothing() => Add("", null, "NoReadings",
            v => _impossible > 0
                ? v.Say($"No line of {_missing + _impossible} can be used; line {_firstImpossible.Line} has {_firstImpossible.Why(v)}, which cannot be.", $"No se puede usar ninguna de {_missing + _impossible} líneas; la {_firstImpossible.Line} tiene {_firstImpossible.Why(v)}, que no puede ser.")
                : _missing > 0 && _columns.Length == 0
                ? v.Say($"None of {_missing} lines has a time, a temperature with its unit and a humidity with its %, and no heading in English or Spanish says what the columns hold.", $"Ninguna de {_missing} líneas tiene hora, temperatura con su unidad y humedad con su %, y ningún título en español o inglés dice qué contienen las columnas.")
                : _missing > 0
                ? v.Say($"None of {_missing} lines has a time, a temperature and a humidity.", $"Ninguna de {_missing} líneas tiene hora, temperatura y humedad.")
                : v.Say("There are no readings in this text.", "No hay lecturas en este texto."),
            v => v.Say("Lines look like: 2026-11-25 14:30, 72 °F, 45 %.", "Las líneas son así: 2026-11-25 14:30; 22 °C; 45 %."));

        private void TooManyRows(int rows) => Add("", null, "TooManyRows",
            v => v.Say($"There are {v.Number(rows, 0)} rows; at most {v.Number(MostRows, 0)} are read.", $"Hay {v.Number(rows, 0)} filas; se leen como mucho {v.Number(MostRows, 0)}."),
            v => v.Say("Export only the days you need.", "Exporte solo los días que necesita."));
    }

    /// <summary>Turns times as written into the wall's clock and the time really passed.</summary>
    private sealed class WallClock(DateTime firstDay, bool dayFirst)
    {
        private DateTime _day = firstDay.Date;
        private static readonly string[] Times = ["H:mm", "H:mm:ss", "h:mm tt", "h:mm:ss tt", "H:mm:ss.fff", "h:mmtt"];
        private readonly string[] _dates = dayFirst
            ? ["yyyy-M-d", "yyyy/M/d", "d/M/yyyy", "d.M.yyyy", "d-M-yyyy", "d/M/yy", "d.M.yy"]
            : ["yyyy-M-d", "yyyy/M/d", "M/d/yyyy", "M-d-yyyy", "M/d/yy"];
        private DateTime? _before;
        private DateTimeOffset? _first;
        private double _elapsedS;
        private double _usualS = 60;
        private int _wentBack;
        private DateTime _firstBack;

        public (DateTime At, double ElapsedS)? Next(string written)
        {
            if (HasOffset(written) && DateTimeOffset.TryParse(written, CultureInfo.InvariantCulture, DateTimeStyles.None, out var exact))
            {
                _first ??= exact;
                return (exact.DateTime, (exact - _first.Value).TotalSeconds);
            }

            if (At(written.Replace('T', ' ')) is not { } at) return null;
            if (_before is { } before)
            {
                var step = (at - before).TotalSeconds;
                if (step < 0)
                {
                    // A forecast past midnight goes on with the next day; any other step back is the clock's.
                    if (IsTimeOnly(written) && step < -6 * 3600) { _day = _day.AddDays(1); at = at.AddDays(1); step += 86400; }
                    else
                    {
                        if (_wentBack++ == 0) _firstBack = before;
                        step = _usualS;
                    }
                }
                else if (step > 0)
                {
                    _usualS = step;
                }

                _elapsedS += step;
            }

            _before = at;
            return (at, _elapsedS);
        }

        public IEnumerable<Reason> Notes()
        {
            if (_wentBack == 0) yield break;
            var (times, first) = (_wentBack, _firstBack);
            yield return new Reason("ClockWentBack", Limit.Note,
                v => v.Say($"The clock goes back (times: {times}), first after {v.Moment(first)}, as when summer time ends. Both passes count in the hour they name.",
                    $"El reloj retrocede (veces: {times}), la primera tras {v.Moment(first)}, como al acabar el horario de verano. Las dos vueltas cuentan en la hora que nombran."),
                v => v.Say("Export times with their offset, such as 2026-10-25T02:30+02:00, to be exact.", "Exporte las horas con su desfase, como 2026-10-25T02:30+02:00, para que sea exacto."));
        }

        private static bool IsTimeOnly(string written) => !written.Contains('/', StringComparison.Ordinal) && !written.Contains('-', StringComparison.Ordinal) && !written.Contains("20", StringComparison.Ordinal) || written.Length <= 8;

        private static bool HasOffset(string written) => written.Length > 16 && (written[^1] == 'Z' || written[^6] is '+' or '-' && written[^3] == ':');

        private DateTime? At(string written)
        {
            var plain = written.Replace("a. m.", "AM", StringComparison.OrdinalIgnoreCase).Replace("p. m.", "PM", StringComparison.OrdinalIgnoreCase).Trim();
            var cut = plain.IndexOf(' ', StringComparison.Ordinal);
            var hasDate = cut > 0 && !plain[..cut].Contains(':', StringComparison.Ordinal);
            var (date, time) = hasDate ? (plain[..cut], plain[(cut + 1)..].Trim()) : ("", plain);
            var on = _day;
            if (hasDate && !DateTime.TryParseExact(date, _dates, CultureInfo.InvariantCulture, DateTimeStyles.None, out on)) return null;
            return DateTime.TryParseExact(time, Times, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out var of) ? on + of.TimeOfDay : null;
        }
    }
}
