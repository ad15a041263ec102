using System.Text.Json.Serialization;

namespace Lapwise.Wire;

// What page and server say to each other beside the documents and answers of the core.

/// <summary>One line of the list of jobs.</summary>
public sealed record JobLine(string Id, string Name, long Version, DateTimeOffset ChangedAt);

/// <summary>A refusal by RFC 9457, with the faults of a document at their paths.</summary>
public sealed record Problem(string? Type, string? Title, int? Status, string? Detail, IReadOnlyList<FaultLine>? Faults);

public sealed record FaultLine(string Path, string Code, string Text, string Cure);

/// <summary>Names of headers that both sides use.</summary>
public static class WireHeaders
{
    /// <summary>Version of the program that speaks, on every request and every answer: an old page is told, not broken.</summary>
    public const string ProgramVersion = "Lapwise-Version";
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(IReadOnlyList<JobLine>))]
[JsonSerializable(typeof(Problem))]
public sealed partial class WireJson : JsonSerializerContext;
