using System.Text.Json.Serialization;

namespace Lapwise.Wire;

// What page and server say to each other beside the documents and answers of the core.

/// <summary>One line of the list of jobs.</summary>
public sealed record JobLine(string Id, string Name, long Version, DateTimeOffset ChangedAt);

/// <summary>A refusal by RFC 9457, with the faults of a document at their paths.</summary>
public sealed record Problem(string? Type, string? Title, int? Status, string? Detail, IReadOnlyList<FaultLine>? Faults);

public sealed record FaultLine(string Path, string Code, string Text, string Cure);

/// <summary>Whether phones are let in, and by what.</summary>
/// <param name="Page">Address of this page for phones on the same network; null: there is no network.</param>
/// <param name="CertificatePage">Where a phone takes the shop's certificate while a code is on show.</param>
/// <param name="Fingerprint">SHA-256 of that certificate, to compare by eye; null while the door has never been open.</param>
/// <param name="Code">The code on show; null: none.</param>
/// <param name="CodeSecondsLeft">How long the code still holds.</param>
public sealed record PhonesLine(
    bool IsOpen, string? Page, string? PageQr, string? CertificatePage, string? CertificateQr, string? Fingerprint,
    string? Code, int CodeSecondsLeft, IReadOnlyList<PhoneLine> Phones);

/// <summary>A device that was let in.</summary>
public sealed record PhoneLine(string Id, string Name, DateTimeOffset Since, DateTimeOffset Seen);

/// <summary>Names of headers that both sides use.</summary>
public static class WireHeaders
{
    /// <summary>Version of the program that speaks, on every request and every answer: an old page is told, not broken.</summary>
    public const string ProgramVersion = "Lapwise-Version";
}

/// <summary>What taking in a document changes, or has changed.</summary>
/// <param name="Plan">Mark of what is told here: sent back, exactly this is changed.</param>
/// <param name="IsDone">False: only told, nothing is changed.</param>
/// <param name="Kept">Entries of the log that are there with other words; they stay.</param>
/// <param name="Steps">What is new or changed, the first of them.</param>
public sealed record TakingLine(string Plan, bool IsDone, int New, int Changed, int Same, int Kept, IReadOnlyList<TakingStepLine> Steps);

public sealed record TakingStepLine(string Part, string Id, string Name, string What, IReadOnlyList<TakingDifferenceLine> Differences);

public sealed record TakingDifferenceLine(string Path, string? Before, string? After);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(IReadOnlyList<JobLine>))]
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(TakingLine))]
[JsonSerializable(typeof(PhonesLine))]
public sealed partial class WireJson : JsonSerializerContext;
