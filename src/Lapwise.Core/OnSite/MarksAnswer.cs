namespace Lapwise.Core.OnSite;

/// <summary>What a server answers to marks: those the device does not have yet, and the time.</summary>
/// <param name="NowMs">The server's clock, milliseconds since 1970, UTC: a device holds its own against it.</param>
/// <param name="Upto">Ask from here the next time.</param>
public sealed record MarksAnswer(long NowMs, long Upto, IReadOnlyList<MarkDocument> Marks);

/// <summary>A run that the server knows of.</summary>
/// <param name="Upto">Grows with every mark.</param>
public sealed record RunLine(string Run, long Upto);
