using System.Text.Json;
using System.Text.Json.Serialization;
using Lapwise.Core.Work;

namespace Lapwise.Core.OnSite;

// What happened on a job, as it is kept: one flat record a mark, so that a log can be read without knowing every kind.
// A mark is made once, on one device, and never changed; MarkReading turns it into a Mark.

/// <summary>A run of one coat as a file: every mark made on any device.</summary>
public sealed record RunDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; set; } = CurrentVersion;
    /// <summary>The marks, in any order; one that stands twice counts once.</summary>
    public IReadOnlyList<MarkDocument> Marks { get; set; } = [];
}

/// <summary>One thing that happened, or was noted, at one time on one device.</summary>
public sealed record MarkDocument
{
    /// <summary>Made on the device, different for every mark anywhere.</summary>
    public string Id { get; set; } = "";
    /// <summary>The device it was made on.</summary>
    public string Device { get; set; } = "";
    /// <summary>Counts the marks of the device in this run, from 1.</summary>
    public long Number { get; set; }
    /// <summary>What it says; a kind that is not known is kept and shown.</summary>
    public string Kind { get; set; } = "";
    /// <summary>The device's clock when it was made: milliseconds since 1970, UTC.</summary>
    public long ClockMs { get; set; }
    /// <summary>Which start of the device's steady counter <c>ticksMs</c> belongs to; a new one each time the page is opened.</summary>
    public string Session { get; set; } = "";
    /// <summary>The device's steady counter when it was made, milliseconds; setting the clock does not move it.</summary>
    public long TicksMs { get; set; }
    /// <summary>Filled in by the program and not tapped; never learned from.</summary>
    public bool? Assumed { get; set; }
    /// <summary>How long before it was made it happened, milliseconds.</summary>
    public long? BackMs { get; set; }
    /// <summary>Whose work it is: place in the plan's crew, from 0.</summary>
    public int? Person { get; set; }
    /// <summary>The section it is about.</summary>
    public string? Section { get; set; }
    /// <summary>The batch it is about.</summary>
    public string? Batch { get; set; }
    /// <summary>The step beside rolling it is about.</summary>
    public string? Step { get; set; }
    /// <summary>What else it is about: the mark undone, the device that leads, the quantity read, the reason taken up, the point checked.</summary>
    public string? Of { get; set; }
    /// <summary>What was read, in °C, as a share from 0 to 1, or in micrometres.</summary>
    public double? Value { get; set; }
    /// <summary>Words of the finisher.</summary>
    public string? Text { get; set; }
    /// <summary>The server's clock less the device's, milliseconds.</summary>
    public long? OffsetMs { get; set; }
    /// <summary>How long the server took to say its time, milliseconds.</summary>
    public long? RoundTripMs { get; set; }
    /// <summary>The plan the run is made from.</summary>
    public IssuedPlan? Plan { get; set; }
    /// <summary>What is still to be rolled, in its new order.</summary>
    public IReadOnlyList<IssuedTurn>? Turns { get; set; }
    /// <summary>Sections that are not rolled in this run.</summary>
    public IReadOnlyList<string>? Left { get; set; }

    /// <summary>Whatever a newer program wrote beside it; kept as it is.</summary>
    [JsonExtensionData] public Dictionary<string, JsonElement>? Rest { get; set; }
}

/// <summary>One section in the order of work: who rolls it, from which batch, after which mixing.</summary>
public sealed record IssuedTurn
{
    private static readonly IReadOnlyList<string> None = [];

    /// <summary>The section.</summary>
    public string Section { get; set; } = "";
    /// <summary>Who rolls it: place in the crew, from 0.</summary>
    public int Person { get; set; }
    /// <summary>The batch it is rolled from.</summary>
    public string Batch { get; set; } = "";
    /// <summary>How long its roller waits, once free, before it and what is mixed for it, so that its laps stay younger, milliseconds.</summary>
    public long? WaitMs { get; set; }
    /// <summary>Batches its roller mixes directly before it, in order, where that is not simply its own; left out: its own, when none is mixed.</summary>
    public IReadOnlyList<string>? Mixes { get; set; }

    /// <summary>The same where it says the same; lists are compared by what they hold.</summary>
    public bool Equals(IssuedTurn? other) =>
        other is not null && (Section, Person, Batch, WaitMs) == (other.Section, other.Person, other.Batch, other.WaitMs)
        && (Mixes ?? None).SequenceEqual(other.Mixes ?? None, StringComparer.Ordinal);

    public override int GetHashCode() => HashCode.Combine(Section, Person, Batch, WaitMs, Mixes?.Count ?? 0);
}

/// <summary>Source-generated JSON of a run; trimmed pages need no reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    MaxDepth = 32)]
[JsonSerializable(typeof(RunDocument))]
[JsonSerializable(typeof(IReadOnlyList<MarkDocument>))]
[JsonSerializable(typeof(MarksAnswer))]
[JsonSerializable(typeof(IReadOnlyList<RunLine>))]
public sealed partial class RunJson : JsonSerializerContext;
