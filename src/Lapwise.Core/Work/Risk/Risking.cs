using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Risk;

/// <summary>What is the chance of a line, of a batch gone off, of running short, when paces and times vary as they do?</summary>
public static class Risking
{
    public const int UsualTrials = 2000;
    public const ulong UsualSeed = 1;

    // Places of the draws of one trial; its steps come after those of the people.
    private const int OpenTimePlace = 0;
    private const int LossPlace = 1;
    private const int FirstPersonPlace = 2;
    private const int FirstStepPlace = 64;
    private const int LeastPlacesOfATrial = 1 << 14;

    /// <summary>Works the plan as issued so many times with times drawn by chance; the same seed gives the same answer.</summary>
    /// <param name="trials">At least 1.</param>
    public static CoatRisk Of(CoatWork work, Job job, int trials, ulong seed) => Of(work, job, trials, seed, Spreads.Usual);

    /// <inheritdoc cref="Of(CoatWork, Job, int, ulong)"/>
    public static CoatRisk Of(CoatWork work, Job job, int trials, ulong seed, Spreads spreads) =>
        Slices.AtOnce(OfAsync(work, job, trials, seed, spreads, Effort.AtOnce.Pause));

    /// <summary>The same in slices, so that a page stays alive meanwhile.</summary>
    /// <exception cref="OperationCanceledException">The pause stopped it.</exception>
    public static async ValueTask<CoatRisk> OfAsync(CoatWork work, Job job, int trials, ulong seed, Spreads spreads, Pause pause)
    {
        const int slice = 10;
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        var trial = new Trial(work, job.Crew, new Draws(seed), spreads);
        var (lines, outlived, late) = (0, 0, 0);
        var lapLines = new int[work.Laps.Count];
        var margins = new long[trials];
        var needs = new double[trials];
        for (var i = 0; i < trials; i++)
        {
            if (i % slice == 0) await pause();
            trial.Run((ulong)i * trial.Places);
            margins[i] = trial.MarginMs(lapLines);
            if (margins[i] < 0) lines++;
            if (trial.SomeBatchOutlivesPot) outlived++;
            if (trial.SomeStepIsLate) late++;
            needs[i] = trial.NeedMl;
        }

        Array.Sort(needs);
        return new CoatRisk(
            trials, seed, spreads,
            new Chance(lines, trials),
            [.. work.Laps.Select((lap, i) => new LapRisk(lap, new Chance(lapLines[i], trials)))],
            new Chance(outlived, trials),
            MarginHistogram.Of(margins),
            needs)
        {
            StepLate = work.Steps.Count == 0 ? null : new Chance(late, trials),
        };
    }

    private sealed class Trial
    {
        private readonly CoatWork _work;
        private readonly Draws _draws;
        private readonly Spreads _spreads;
        private readonly Retiming _plan;
        private readonly (int A, int B)[] _laps;
        private readonly double[] _daySpread;
        private readonly double[] _day;
        private readonly double _netMl;
        private readonly double _lossMl;
        // When each section's film would have begun had it come from a fresh batch and were now as far closed.
        private readonly long[] _counted;
        private long _openTimeMs;

        public Trial(CoatWork work, IReadOnlyList<Person> crew, Draws draws, Spreads spreads)
        {
            (_work, _draws, _spreads) = (work, draws, spreads);
            _plan = new Retiming(work);
            _daySpread = [.. crew.Select(p => p.Pace.DaySpread)];
            _day = new double[crew.Count];
            _counted = new long[work.Sections.Count];
            var place = work.Sections.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i, StringComparer.Ordinal);
            _laps = [.. work.Laps.Select(l => l.Kind == LapKind.Break ? (-1, -1) : (place[l.A], place[l.B]))];
            _netMl = work.Batches.Sum(b => b.NetMl);
            _lossMl = work.Batches.Sum(b => b.VolumeMl) - _netMl;
        }

        public double NeedMl { get; private set; }

        /// <summary>How many draws one trial has room for.</summary>
        public ulong Places => (ulong)Math.Max(LeastPlacesOfATrial, FirstStepPlace + _plan.Steps);

        public bool SomeStepIsLate => _plan.SomeStepIsLate;

        public bool SomeBatchOutlivesPot
        {
            get
            {
                for (var b = 0; b < _work.Batches.Count; b++)
                    if (_plan.LifeOf(b) > _work.PotLifeMs) return true;
                return false;
            }
        }

        public void Run(ulong from)
        {
            for (var p = 0; p < _day.Length; p++) _day[p] = _daySpread[p] * _draws.Normal(from + FirstPersonPlace + (ulong)p);
            _plan.Run((step, person, isMixing) =>
                Math.Exp((isMixing ? 0 : _day[person]) + ((isMixing ? _spreads.Mixing : _spreads.Section) * _draws.Normal(from + FirstStepPlace + (ulong)step))));
            _openTimeMs = (long)Math.Round(OpenTimeMs(from + OpenTimePlace));
            NeedMl = _netMl + (_lossMl * Math.Exp(_spreads.Loss * _draws.Normal(from + LossPlace)));
        }

        private double OpenTimeMs(ulong place) => (_work.OpenTime.Origin, _work.Coat.TestBoardFirstBadS) switch
        {
            (Origin.TestBoard, { } badS) => _work.OpenTimeMs + (((badS * 1000) - _work.OpenTimeMs) * _draws.Even(place)),
            (Origin.TestBoard, null) => _work.OpenTimeMs,
            (Origin.DataSheet, _) => _work.OpenTimeMs * Math.Exp(_spreads.SheetOpenTime * _draws.Normal(place)),
            _ => _work.OpenTimeMs * Math.Exp(_spreads.GuessedOpenTime * _draws.Normal(place)),
        };

        /// <summary>The worst margin of the trial; counts each lap that shows.</summary>
        public long MarginMs(int[] lapLines)
        {
            long worst = 0;
            for (var i = 0; i < _counted.Length; i++)
            {
                _counted[i] = _plan.StartOf(i) - BatchAgeing.UsedMs(_work.BatchAgeShare, _plan.BatchAgeOf(i));
                worst = Math.Max(worst, _plan.EndOf(i) - _counted[i]);
            }

            for (var i = 0; i < _laps.Length; i++)
            {
                var (a, b) = _laps[i];
                if (a < 0) continue;
                var age = Math.Max(_plan.EndOf(a), _plan.EndOf(b)) - Math.Min(_counted[a], _counted[b]);
                worst = Math.Max(worst, age);
                if (age > _openTimeMs) lapLines[i]++;
            }

            return _openTimeMs - worst;
        }
    }
}
