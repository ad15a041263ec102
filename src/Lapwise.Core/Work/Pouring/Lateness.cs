namespace Lapwise.Core.Work.Pouring;

/// <summary>How late things come, and then how narrowly they do not.</summary>
/// <param name="LateMs">After their time, summed.</param>
/// <param name="HurriedMs">After the time that would leave something in hand, summed.</param>
internal readonly record struct Lateness(long LateMs, long HurriedMs)
{
    public static Lateness operator +(Lateness a, Lateness b) => new(a.LateMs + b.LateMs, a.HurriedMs + b.HurriedMs);

    public bool IsLessThan(Lateness other) => (LateMs, HurriedMs).CompareTo((other.LateMs, other.HurriedMs)) < 0;
}
