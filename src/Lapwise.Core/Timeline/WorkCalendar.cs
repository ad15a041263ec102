using Lapwise.Core.Jobs;

namespace Lapwise.Core.Timeline;

/// <summary>Working hours on the clock on the wall. Times in whole minutes from midnight of day 0.</summary>
public sealed class WorkCalendar
{
    public const long DayMin = 24 * 60;
    // A Monday, so that counted days begin a week.
    private static readonly DateOnly FirstCounted = new(2001, 1, 1);

    private readonly TimelineAsks asks;

    public WorkCalendar(TimelineAsks asks)
    {
        this.asks = asks;
        Day0 = asks.Start ?? FirstCounted;
    }

    /// <summary>Where no first day is set, a Monday that stands for day 1.</summary>
    public DateOnly Day0 { get; }

    public DateTime At(long minute) => Day0.ToDateTime(TimeOnly.MinValue).AddMinutes(minute);

    public bool IsWorked(long day)
    {
        var date = Day0.AddDays((int)day);
        return asks.WorkDays.Contains(date.DayOfWeek) && !asks.DaysOff.Contains(date);
    }

    /// <summary>Minutes worked on a working day.</summary>
    public long HoursMin => asks.WorkToMin - asks.WorkFromMin;

    /// <summary>
    /// The first place for a step that begins at a minute or later. What may be split goes on the next working day;
    /// what may not and is longer than a day begins with the day and runs past its end.
    /// </summary>
    /// <param name="lengthMin">0 or more.</param>
    public Placed Place(long earliest, long lengthMin, bool splits)
    {
        List<(long From, long To)> parts = [];
        var left = lengthMin;
        for (var day = Math.Max(0, earliest / DayMin); ; day++)
        {
            if (!IsWorked(day)) continue;
            var (open, close) = ((day * DayMin) + asks.WorkFromMin, (day * DayMin) + asks.WorkToMin);
            var from = Math.Max(open, earliest);
            if (splits && left > 0)
            {
                if (from >= close) continue;
                var done = Math.Min(left, close - from);
                parts.Add((from, from + done));
                left -= done;
                if (left == 0) return new Placed(parts[0].From, parts[^1].To, parts);
            }
            else if (from + lengthMin <= close || (lengthMin > HoursMin && from == open))
            {
                return new Placed(from, from + lengthMin, [(from, from + lengthMin)]);
            }
        }
    }

    /// <summary>The first place that ends no earlier than a minute.</summary>
    public Placed PlaceEnding(long notEarlierThan, long lengthMin, bool splits)
    {
        // A later beginning never ends earlier, so halving finds the first that does.
        var (before, after) = (-1L, notEarlierThan);
        while (after - before > 1)
        {
            var middle = before + ((after - before) / 2);
            if (Place(middle, lengthMin, splits).End >= notEarlierThan) after = middle;
            else before = middle;
        }

        return Place(after, lengthMin, splits);
    }
}

/// <summary>Where a step lies, in minutes.</summary>
/// <param name="Parts">One for each day it is worked on.</param>
public sealed record Placed(long Start, long End, IReadOnlyList<(long From, long To)> Parts);
