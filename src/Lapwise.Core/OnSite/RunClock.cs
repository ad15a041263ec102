using Lapwise.Core.Explain;

namespace Lapwise.Core.OnSite;

/// <summary>
/// One time for all devices of a run, in milliseconds since 1970. Within a device the steady counter rules: a clock that is set
/// back does not make a film younger. A clock that jumps ahead counts as time passed, since a phone that sleeps stops its
/// counter and an older film is the cautious answer. Devices are brought together by the server's time where they have met it.
/// </summary>
public sealed class RunClock
{
    /// <summary>Clocks are trimmed by the network all day; less than this is not worth a word.</summary>
    private const long Trimmed = 2_000;
    private const long WorthSaying = 60_000;

    private readonly Dictionary<string, DeviceTime> _devices;
    private readonly Dictionary<string, long> _madeAt;

    private RunClock(Dictionary<string, DeviceTime> devices, Dictionary<string, long> madeAt, IReadOnlyList<Phrase> assumed) =>
        (_devices, _madeAt, Assumed) = (devices, madeAt, assumed);

    /// <summary>What had to be taken for granted about the clocks.</summary>
    public IReadOnlyList<Phrase> Assumed { get; }

    /// <param name="marks">Each id once.</param>
    public static RunClock Of(IReadOnlyCollection<Mark> marks)
    {
        var devices = new Dictionary<string, DeviceTime>(StringComparer.Ordinal);
        var own = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var mark in marks.OrderBy(m => m.Stamp.Made.Device, StringComparer.Ordinal).ThenBy(m => m.Stamp.Number).ThenBy(m => m.Stamp.Id, StringComparer.Ordinal))
        {
            var name = mark.Stamp.Made.Device;
            if (!devices.TryGetValue(name, out var device)) devices[name] = device = new DeviceTime();
            own[mark.Stamp.Id] = device.Read(mark.Stamp.Made);
            if (mark.What is What.Paired paired) device.Pair(paired);
        }

        var assumed = devices.OrderBy(d => d.Key, StringComparer.Ordinal).SelectMany(d => d.Value.Assumed).ToList();
        var alone = string.Join(", ", devices.Where(d => devices.Count > 1 && !d.Value.IsPaired).Select(d => NameOf(d.Key)).Order(StringComparer.Ordinal));
        if (alone.Length > 0)
        {
            assumed.Add(v => v.Say($"Never held against the server's clock: {alone}. Those times are taken as they are.",
                $"Nunca se comparó con el reloj del servidor: {alone}. Esas horas se toman tal cual."));
        }

        return new RunClock(devices, marks.ToDictionary(m => m.Stamp.Id, m => own[m.Stamp.Id] + devices[m.Stamp.Made.Device].OffsetMs, StringComparer.Ordinal), assumed);
    }

    /// <summary>When a mark of the run was made.</summary>
    public long MadeAt(Mark mark) => _madeAt[mark.Stamp.Id];

    /// <summary>When what a mark says happened.</summary>
    public long HappenedAt(Mark mark) => MadeAt(mark) - mark.Stamp.BackMs;

    /// <summary>A device's present moment in the run's time; never before its last mark.</summary>
    public long At(DeviceMoment now) => _devices.TryGetValue(now.Device, out var device) ? device.Copy().Read(now) + device.OffsetMs : now.ClockMs;

    /// <summary>The last letters of a device's id: enough to tell two phones apart.</summary>
    public static string NameOf(string device) => device.Length <= 6 ? device : device[^6..];

    /// <summary>The times of one device, read in the order of its marks.</summary>
    private sealed class DeviceTime
    {
        private readonly Dictionary<string, (long Clock, long Ticks)> _sessions = new(StringComparer.Ordinal);
        private long? _last;
        private long _ahead;                        // the device's true course less its clock
        private (long Trip, long Offset)? _pairing;

        public List<Phrase> Assumed { get; private init; } = [];
        public bool IsPaired => _pairing is not null;
        public long OffsetMs => _pairing?.Offset ?? 0;

        public long Read(DeviceMoment made)
        {
            if (_sessions.TryGetValue(made.Session, out var before)) Within(made, before);
            var time = made.ClockMs + _ahead;
            if (_last is { } last && time < last)
            {
                if (last - time > Trimmed) SetBackUnseen(last - time);
                _ahead += last - time;
                time = last;
            }

            _sessions[made.Session] = (made.ClockMs, made.TicksMs);
            _last = time;
            return time;
        }

        /// <summary>The offset is given for the clock; it is kept for the true course, so that setting the clock changes nothing. The quickest answer rules.</summary>
        public void Pair(What.Paired paired)
        {
            if (_pairing is { } kept && kept.Trip <= paired.RoundTripMs) return;
            _pairing = (paired.RoundTripMs, paired.OffsetMs - _ahead);
        }

        public DeviceTime Copy()
        {
            var copy = new DeviceTime { _last = _last, _ahead = _ahead, _pairing = _pairing };
            foreach (var (session, at) in _sessions) copy._sessions[session] = at;
            return copy;
        }

        private void Within(DeviceMoment made, (long Clock, long Ticks) before)
        {
            var (clock, ticks) = (made.ClockMs - before.Clock, Math.Max(0, made.TicksMs - before.Ticks));
            if (ticks - clock > Trimmed)
            {
                _ahead += ticks - clock;
                var back = ticks - clock;
                Assumed.Add(v => v.Say($"A clock was set back by {Voice.Span(back / 1000.0)}; the time in between was counted on.", $"Se atrasó un reloj {Voice.Span(back / 1000.0)}; el tiempo transcurrido se siguió contando."));
            }
            else if (clock - ticks > WorthSaying)
            {
                var ahead = clock - ticks;
                Assumed.Add(v => v.Say($"A clock went {Voice.Span(ahead / 1000.0)} ahead of its counter: taken as time passed while the phone slept.", $"Un reloj se adelantó {Voice.Span(ahead / 1000.0)} a su contador: se toma como tiempo con el teléfono dormido."));
            }
        }

        private void SetBackUnseen(long back) =>
            Assumed.Add(v => v.Say($"A clock went back by {Voice.Span(back / 1000.0)} while the page was closed: how long it was closed is not known, so films may be older than shown.",
                $"Un reloj se atrasó {Voice.Span(back / 1000.0)} con la página cerrada: no se sabe cuánto estuvo cerrada, y las películas pueden ser más viejas de lo que se muestra."));
    }
}
