using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.OnSite;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Tests.Work;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.OnSite;

/// <summary>Runs written down by hand: one invented phone, and what is tapped on it.</summary>
internal static class Runs
{
    public const long Nine = 1_790_000_000_000;
    public const long Minute = 60_000;

    /// <summary>Sections 1, 2, 3 … on a path, two minutes each, after two minutes of mixing; ten minutes of open time.</summary>
    public static IssuedPlan Path(int sections = 4, double openS = 600, params IEnumerable<Reason> against) =>
        Issue(Plans.Path(openS, Origin.DataSheet, 2 * Minute, [.. Enumerable.Repeat(2 * Minute, sections)]), against);

    public static IssuedPlan Issue(CoatWork work, params IEnumerable<Reason> against) =>
        Issuing.Issue(Invented.Job, 0, work, new CoatSupply(work.Coat, 0, 0, [], [], 0, 0, [], new Basis("", [], Sources.Geometry)), against, Invented.Job.Units, "test", "0.0.0");
}

/// <summary>A phone with its two clocks.</summary>
internal sealed class Phone(string name, long clockMs = Runs.Nine)
{
    private long _clock = clockMs;
    private long _ticks = 5_000;
    private int _session = 1;
    private long _number;

    public List<MarkDocument> Marks { get; } = [];
    public DeviceMoment Now => new(name, $"{name}-{_session}", _clock, _ticks);
    public Run Run => Folding.Fold(Marks)!;
    public long RunNow => Run.Clock.At(Now);

    public Phone Waits(long ms)
    {
        (_clock, _ticks) = (_clock + ms, _ticks + ms);
        return this;
    }

    /// <summary>Somebody sets its clock.</summary>
    public Phone IsSet(long byMs)
    {
        _clock += byMs;
        return this;
    }

    /// <summary>The page is closed and opened again.</summary>
    public Phone IsReopened()
    {
        (_session, _ticks) = (_session + 1, 1_000);
        return this;
    }

    public MarkDocument Mark(What what, bool assumed = false, long backMs = 0)
    {
        var mark = MarkReading.Write(new Core.OnSite.Mark(new Stamp($"{name}{++_number:0000}", Now, _number, assumed, backMs), what));
        Marks.Add(mark);
        return mark;
    }

    public Phone Taps(What what, long backMs = 0)
    {
        Mark(what, backMs: backMs);
        return this;
    }

    public Phone Assumes(What what, long backMs = 0)
    {
        Mark(what, assumed: true, backMs);
        return this;
    }
}
