using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Work;

namespace Lapwise.Core.OnSite;

/// <summary>Puts what is left of a run on the clock.</summary>
internal sealed class Forecasting
{
    /// <summary>Two people need this much along a side. Common practice, no source; the plan counts with the same.</summary>
    private const double ElbowRoomM = 0.6;

    /// <summary>In the place of a turn's batch: one mixed for it.</summary>
    public const string FreshBatch = "*";

    /// <summary>What is measured into a cup is a little over what the sections take.</summary>
    private const double CupTolerance = 1.03;

    private readonly Run _run;
    private readonly PaceSeen _pace;
    private readonly long _now;
    private readonly long _goOn;
    private readonly long _since;   // when the run was begun
    private readonly List<ForecastSection> _placed = [];
    private readonly List<Cup> _cups = [];
    private readonly Dictionary<int, long> _free = [];
    private bool _keepsBatches = true;

    private Forecasting(Run run, PaceSeen pace, long nowMs, long pauseMs)
    {
        (_run, _pace, _now, _goOn) = (run, pace, nowMs, nowMs + pauseMs);
        _since = run.Batches.Select(b => b.AtMs).Concat(run.Sections.Values.Select(s => s.WetAtMs)).DefaultIfEmpty(_goOn).Min();
        PlaceBegun();
        PlaceMixed();
    }

    /// <param name="turns">The order of what is ahead, each from its batch, which is mixed if it is not; without one, from the cup as long as it lasts.</param>
    /// <param name="left">Sections not rolled, beside those the run has left already.</param>
    /// <param name="pauseMs">All hands stand still for so long first.</param>
    public static Forecast Of(Run run, PaceSeen pace, long nowMs, IReadOnlyList<IssuedTurn> turns, IReadOnlySet<string>? left = null, long pauseMs = 0)
    {
        var forecasting = new Forecasting(run, pace, nowMs, pauseMs);
        foreach (var turn in Ahead(run, turns).Where(t => left is null || !left.Contains(t.Section))) forecasting.Place(turn);
        return forecasting.Answer();
    }

    /// <summary>The turns not yet begun and not left; a section that no turn names comes last, as planned.</summary>
    public static IReadOnlyList<IssuedTurn> Ahead(Run run, IReadOnlyList<IssuedTurn> turns)
    {
        var named = turns.Select(t => t.Section).ToHashSet(StringComparer.Ordinal);
        var known = run.Plan.Sections.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. turns.Where(t => known.Contains(t.Section)).DistinctBy(t => t.Section, StringComparer.Ordinal)
                .Concat(run.Plan.Sections.Where(s => !named.Contains(s.Id)).Select(s => new IssuedTurn { Section = s.Id, Person = s.Person, Batch = s.Batch }))
                .Where(t => !run.IsBegun(t.Section) && !run.Left.Contains(t.Section)),
        ];
    }

    private void PlaceBegun()
    {
        foreach (var done in _run.Sections.Values.Where(s => !_run.Left.Contains(s.Section) || s.DryAtMs is not null))
        {
            var section = _run.SectionOf(done.Section);
            var end = done.DryAtMs ?? EndOfBegun(section, done);
            _placed.Add(new ForecastSection(section, done.Person, done.WetAtMs, end, done.DryAtMs is null ? Progress.Wet : Progress.Dry, _run.BatchOf(done)?.Batch ?? section.Batch, _run.FilmSinceMs(done)));
            Occupy(done.Person, end);
        }
    }

    private long EndOfBegun(IssuedSection section, SectionDone done)
    {
        var worked = Math.Max(0, _now - done.WetAtMs - _run.HaltedMs(done.WetAtMs, _now));
        return _goOn + Math.Max(0, _pace.TimeOf(section, done.Person) - worked);
    }

    private void PlaceMixed()
    {
        foreach (var mixed in _run.Batches)
        {
            var (done, ready) = (mixed.AtMs + _run.Plan.MixMs, mixed.AtMs + _run.Plan.MixMs + _run.Plan.StandMs);
            var used = _placed.Where(p => p.Batch == mixed.Batch).ToList();
            var planned = _run.Plan.Batches.FirstOrDefault(b => b.Id == mixed.Batch)?.GivesMl ?? _run.Plan.LargestGivesMl;
            _cups.Add(new Cup(mixed.Batch, mixed.Person, mixed.AtMs, used.Count > 0 ? Math.Min(ready, used.Min(u => u.StartMs)) : Math.Max(ready, _goOn > _now ? _goOn : ready), IsMixed: true)
            {
                HoldsMl = planned * CupTolerance, TakenMl = used.Sum(u => u.Section.TakesMl), LastUsedMs = used.Select(u => u.EndMs).DefaultIfEmpty(mixed.AtMs).Max(),
            });
            // Who has begun a section since is no longer mixing.
            if (!_run.Sections.Values.Any(s => s.Person == mixed.Person && s.WetAtMs >= mixed.AtMs)) Occupy(mixed.Person, done);
        }
    }

    private void Place(IssuedTurn turn)
    {
        var section = _run.SectionOf(turn.Section);
        var takes = _pace.TimeOf(section, turn.Person);
        if (turn.WaitMs is { } wait) Occupy(turn.Person, _free.GetValueOrDefault(turn.Person, _since) + wait);
        foreach (var ahead in turn.Mixes ?? [])
            if (!_cups.Exists(c => c.Id == ahead)) Mix(ahead, turn.Person, _goOn);
        var begin = FreeMs(turn.Person);
        foreach (var before in _placed.Where(p => section.After.Contains(p.Section.Id))) begin = Math.Max(begin, before.EndMs);

        begin = BesideNobody(section, turn.Person, begin, takes);
        var cup = Drawn(turn, section, begin, takes) ?? Mix(ToMix(turn.Batch), turn.Person, begin);
        var start = BesideNobody(section, turn.Person, Math.Max(begin, cup.ReadyMs), takes);
        cup.TakenMl += section.TakesMl;
        cup.LastUsedMs = Math.Max(cup.LastUsedMs, start + takes);
        _keepsBatches &= start + takes <= _run.UseByMs(cup.StartMs);
        _placed.Add(new ForecastSection(section, turn.Person, start, start + takes, Progress.Ahead, cup.Id, start - BatchAgeing.UsedMs(_run.Plan.BatchAgeShare, start - cup.StartMs - _run.Plan.MixMs)));
        Occupy(turn.Person, start + takes);
    }

    /// <summary>The cup of its batch while that lasts, else the first that does of the one in use and those mixed since; null: one has to be mixed.</summary>
    private Cup? Drawn(IssuedTurn turn, IssuedSection section, long start, long takes)
    {
        var named = _cups.Find(c => c.Id == turn.Batch);
        if (turn.Batch == FreshBatch || (turn.Batch.Length > 0 && named is null)) return null;
        return _cups.Skip(InUse).Prepend(named).FirstOrDefault(cup =>
            cup is not null && cup.TakenMl + section.TakesMl <= cup.HoldsMl && Math.Max(start, cup.ReadyMs) + takes <= _run.UseByMs(cup.StartMs));
    }

    /// <summary>Place of the last cup that anything is rolled from; what was mixed before it is used up.</summary>
    private int InUse => Math.Max(0, _cups.FindLastIndex(c => c.TakenMl > 0));

    private string ToMix(string batch)
    {
        var mixed = _cups.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        if (batch.Length == 0 || batch == FreshBatch) return _run.Plan.Batches.FirstOrDefault(b => !mixed.Contains(b.Id))?.Id ?? Extra(mixed);
        return mixed.Contains(batch) ? Extra(mixed) : batch;
    }

    /// <summary>A helper has it ready when it is wanted; who rolls mixes before going on.</summary>
    private Cup Mix(string id, int roller, long wanted)
    {
        var next = _run.Plan.Batches.FirstOrDefault(b => b.Id == id);
        var mixer = next?.MixedBy ?? (_cups.Count > 0 ? _cups[^1].Person : roller);
        var isHelper = mixer != roller && !_run.Plan.Sections.Any(s => s.Person == mixer);
        var start = Math.Max(FreeMs(mixer), isHelper ? wanted - _run.Plan.MixMs - _run.Plan.StandMs : _goOn);
        var cup = new Cup(id, mixer, start, start + _run.Plan.MixMs + _run.Plan.StandMs, IsMixed: false) { HoldsMl = Math.Max(_run.Plan.LargestGivesMl, next?.GivesMl ?? 0) * CupTolerance };
        _cups.Add(cup);
        Occupy(mixer, start + _run.Plan.MixMs);
        return cup;
    }

    /// <summary>The last batch's letter with a plus for each batch beyond the plan.</summary>
    private string Extra(HashSet<string> mixed)
    {
        var id = (_cups.Count > 0 ? _cups[^1].Id : "A") + "+";
        while (mixed.Contains(id)) id += "+";
        return id;
    }

    /// <summary>Not while somebody else stands in the same place.</summary>
    private long BesideNobody(IssuedSection section, int person, long start, long takes)
    {
        bool moved;
        do
        {
            moved = false;
            foreach (var other in _placed)
            {
                if (other.Person == person || other.Progress is Progress.Dry || other.EndMs <= start || other.StartMs >= start + takes || !Elbows(other.Section, section)) continue;
                (start, moved) = (other.EndMs, true);
            }
        }
        while (moved);
        return start;
    }

    public static bool Elbows(IssuedSection a, IssuedSection b)
    {
        var (dx, dy) = (a.StandAt.X - b.StandAt.X, a.StandAt.Y - b.StandAt.Y);
        return a.Top == b.Top && (dx * dx) + (dy * dy) < ElbowRoomM * ElbowRoomM;
    }

    private long FreeMs(int person) => Math.Max(_free.GetValueOrDefault(person, _goOn), _goOn);

    private void Occupy(int person, long untilMs) => _free[person] = Math.Max(_free.GetValueOrDefault(person, long.MinValue), untilMs);

    private Forecast Answer()
    {
        var at = _placed.ToDictionary(p => p.Section.Id, StringComparer.Ordinal);
        var laps = new List<ForecastLap>();
        foreach (var lap in _run.Plan.Laps.Where(l => l.Kind is not LapKind.Break))
        {
            var (a, b) = (at.GetValueOrDefault(lap.A), at.GetValueOrDefault(lap.B));
            if (a is null && b is null) continue;
            if (a is null || b is null)
            {
                laps.Add(new ForecastLap(lap, LapStage.Stopped, (a ?? b)!.FilmSinceMs, 0));
                continue;
            }

            var since = Math.Min(a.FilmSinceMs, b.FilmSinceMs);
            var standing = (a.Progress, b.Progress) switch
            {
                (Progress.Ahead, Progress.Ahead) => LapStage.Ahead,
                (Progress.Dry, Progress.Dry) => LapStage.Joined,
                _ => LapStage.Open,
            };
            laps.Add(new ForecastLap(lap, standing, since, _run.OpenTimeMs - (_run.FilmMs(Math.Max(a.EndMs, b.EndMs)) - since)));
        }

        var begun = Math.Max(0, _cups.FindLastIndex(c => _placed.Exists(p => p.Batch == c.Id && p.Progress is not Progress.Ahead)));
        return new Forecast(_now,
            [.. _placed.OrderBy(p => p.StartMs).ThenBy(p => p.Section.Id, StringComparer.Ordinal)],
            [.. _cups.Select((c, i) => BatchOf(c, i >= begun))],
            laps, _keepsBatches);
    }

    private ForecastBatch BatchOf(Cup cup, bool isLastBegun)
    {
        var rolled = _placed.Where(p => p.Batch == cup.Id).ToList();
        var ahead = rolled.Where(p => p.Progress is Progress.Ahead).OrderBy(p => p.StartMs).Select(p => p.Section.Id).ToList();
        return new ForecastBatch(cup.Id, cup.Person, cup.StartMs, cup.ReadyMs, _run.UseByMs(cup.StartMs), cup.IsMixed, cup.LastUsedMs, cup.TakenMl, ahead,
            cup.IsMixed && (isLastBegun || rolled.Exists(p => p.Progress is not Progress.Dry)));
    }

    private sealed record Cup(string Id, int Person, long StartMs, long ReadyMs, bool IsMixed)
    {
        public double HoldsMl { get; init; }
        public double TakenMl { get; set; }
        public long LastUsedMs { get; set; }
    }
}
