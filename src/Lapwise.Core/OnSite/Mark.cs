namespace Lapwise.Core.OnSite;

/// <summary>When and where a mark was made.</summary>
/// <param name="Number">Counts the marks of the device in the run.</param>
/// <param name="Assumed">Filled in by the program and not tapped; never learned from.</param>
/// <param name="BackMs">How long before it was made it happened.</param>
public sealed record Stamp(string Id, DeviceMoment Made, long Number, bool Assumed, long BackMs);

/// <summary>A reading of one device's two clocks.</summary>
/// <param name="Session">Which start of the steady counter <paramref name="TicksMs"/> belongs to.</param>
/// <param name="ClockMs">Milliseconds since 1970, UTC, as the device has it.</param>
/// <param name="TicksMs">The steady counter, which setting the clock does not move.</param>
public readonly record struct DeviceMoment(string Device, string Session, long ClockMs, long TicksMs);

/// <summary>Something that happened on site, with its stamp.</summary>
public sealed record Mark(Stamp Stamp, What What);

/// <summary>What a mark says.</summary>
public abstract record What
{
    private What() { }

    /// <summary>The run begins from this plan, led by the device that made the mark.</summary>
    public sealed record Issued(IssuedPlan Plan) : What;
    /// <summary>A and B came together: the batch lives from here.</summary>
    public sealed record BatchMixed(string Batch, int Person) : What;
    /// <summary>The first wet material is on the section.</summary>
    /// <param name="Batch">The one it is rolled from; null in marks of programs that named none.</param>
    public sealed record SectionWet(string Section, int Person, string? Batch = null) : What;
    /// <summary>The section's dry pass is done.</summary>
    public sealed record SectionDry(string Section, int Person) : What;
    /// <summary>A step beside rolling is done.</summary>
    public sealed record StepDone(string Step) : What;
    /// <summary>All hands stop.</summary>
    public sealed record Paused : What;
    public sealed record Resumed : What;
    /// <summary>Something was measured: <c>air</c>, <c>surface</c>, <c>material</c> in °C, <c>humidity</c> from 0 to 1, <c>wetFilm</c> in µm.</summary>
    public sealed record Reading(string Quantity, double Value) : What;
    /// <summary>The lead device put what is still to be rolled in a new order.</summary>
    public sealed record Replanned(IReadOnlyList<IssuedTurn> Turns) : What;
    /// <summary>These sections are not rolled in this run.</summary>
    public sealed record StoppedBefore(IReadOnlyList<string> Left) : What;
    /// <summary>An earlier mark does not count; undoing this one makes it count again.</summary>
    public sealed record Undone(string Mark) : What;
    public sealed record Noted(string Text) : What;
    /// <summary>A point of the preparation is seen to.</summary>
    public sealed record Checked(string Point) : What;
    /// <summary>The finisher goes on at their own word against one reason, and says why.</summary>
    public sealed record TakenUp(string Code, string Why) : What;
    /// <summary>This device leads from here on.</summary>
    public sealed record Led(string Device) : What;
    /// <summary>The device's clock was held against the server's.</summary>
    /// <param name="OffsetMs">Server less device.</param>
    public sealed record Paired(long OffsetMs, long RoundTripMs) : What;
    /// <summary>A kind of mark that this program does not know, or one that lacks what its kind needs.</summary>
    public sealed record NotKnown : What;
}
