using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Answers;

/// <summary>How far the search for days has come.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<DaysState>))]
public enum DaysState
{
    /// <summary>None was begun since the server started.</summary>
    None,
    /// <summary>Each job is taken through its own phases.</summary>
    Reading,
    Searching,
    Done,
    /// <summary>By hand; what was found until then stands.</summary>
    Stopped,
    /// <summary>There are no such days, with what stands against them.</summary>
    Impossible,
    /// <summary>Not begun: what was entered cannot be used.</summary>
    Refused,
    /// <summary>Neither found nor ruled out in the time.</summary>
    Undecided,
}

/// <summary>The days of many jobs as far as they are found.</summary>
/// <param name="Input">Mark of what was entered: the same is the same answer.</param>
/// <param name="IsOld">What was entered has changed since.</param>
/// <param name="Seconds">Since it was begun.</param>
/// <param name="Better">How many answers were found so far, each better than the one before.</param>
/// <param name="LastEnd">When the last visit of all ends.</param>
/// <param name="Bound">Proven: the last visit of all ends no earlier.</param>
/// <param name="Gap">How far the end may be from the best, as a share of the time from the first day.</param>
/// <param name="IsRepeatable">The same input gives this answer again.</param>
public sealed record DaysAnswer(
    DaysState State, string Input, bool IsOld, int JobsRead, int Jobs, double Seconds, int Better,
    string? LastEnd, string? Bound, double? Gap, bool IsProven, bool IsRepeatable,
    IReadOnlyList<VisitDocument> Visits, IReadOnlyList<VisitMoveAnswer> Moves, IReadOnlyList<ReasonAnswer> Reasons, IReadOnlyList<JobLeftOutAnswer> LeftOut)
{
    /// <summary>Jobs with visits that are to stay although their deposit is not in.</summary>
    public IReadOnlyList<JobLeftOutAnswer> NotFixed { get; init; } = [];

    /// <summary>What is worth knowing of days that hold: what is kept at somebody's own word, and households that go without for long.</summary>
    public IReadOnlyList<ReasonAnswer> Notes { get; init; } = [];

    /// <summary>An earlier last end that more moves of settled visits would bring; left out: none was found.</summary>
    public SoonerAnswer? Sooner { get; init; }

    /// <summary>Settled visits gave way to an earlier last end.</summary>
    public bool IsAfresh { get; init; }

    /// <summary>How often it was looked on for longer: each time with so many times the effort.</summary>
    public int Longer { get; init; }

    /// <summary>Whether looking on for longer is still offered: the end is not proven.</summary>
    public bool CanLookOn { get; init; }
}

/// <summary>All could end sooner if more settled visits moved.</summary>
/// <param name="Moved">How many of the settled visits would stand elsewhere.</param>
/// <param name="Text">The same in a sentence.</param>
public sealed record SoonerAnswer(string LastEnd, int Moved, string Text);

/// <summary>A visit that stands elsewhere than where it was settled.</summary>
/// <param name="Visit">As <c>job/2</c>.</param>
/// <param name="Job">Name of its job.</param>
/// <param name="Name">What is done in it.</param>
/// <param name="Why">What moved the job: the same for all its visits.</param>
public sealed record VisitMoveAnswer(string Visit, string Job, string Name, string From, string? FromCrew, string To, string? ToCrew, string Why);

/// <summary>A job that has no days yet.</summary>
public sealed record JobLeftOutAnswer(string Job, string Name, string Why);

/// <summary>The private address of the calendar.</summary>
/// <param name="Here">For programs on this computer; null: none was made, or it was taken back.</param>
/// <param name="OnNetwork">For devices on the same network; null: the door for phones is closed.</param>
public sealed record FeedAnswer(string? Here, string? OnNetwork);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(DaysAnswer))]
[JsonSerializable(typeof(FeedAnswer))]
public sealed partial class DaysJson : JsonSerializerContext;
