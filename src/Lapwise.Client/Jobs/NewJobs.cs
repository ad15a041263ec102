using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Jobs;

/// <summary>What a new job and its new parts start with.</summary>
internal static class NewJobs
{
    /// <summary>In the page's language and units, with one pair of hands; what must be measured is left blank.</summary>
    /// <param name="zone">Where its days are told on a calendar; null: not known.</param>
    public static JobDocument Blank(Voice voice, string? zone) => new()
    {
        Name = voice.Say("New job", "Trabajo nuevo"),
        Units = voice.Units,
        Language = voice.Language,
        Crew = [new PersonDocument { Name = voice.Say("Me", "Yo") }],
        Timeline = zone is null ? null : new TimelineDocument { Zone = zone },
    };

    /// <summary>A rectangle with walls behind and beside it and an open front: the commonest counter run.</summary>
    public static TopDocument Top(JobDocument job, Voice voice) => new()
    {
        Name = voice.Say($"Top {job.Tops.Count + 1}", $"Cubierta {job.Tops.Count + 1}"),
        Thickness = voice.Units == UnitSystem.Us ? "1 1/2 in" : "38 mm",
        Edges = new Dictionary<string, EdgeDocument>(StringComparer.Ordinal)
        {
            ["A"] = new(),
            ["B"] = new(),
            ["C"] = Edge(EdgeKind.Open, voice),
            ["D"] = new(),
        },
    };

    /// <summary>An edge of a kind, with the sizes that are usual for it.</summary>
    public static EdgeDocument Edge(EdgeKind kind, Voice voice)
    {
        var us = voice.Units == UnitSystem.Us;
        return kind switch
        {
            EdgeKind.Open => new() { Kind = kind, Profile = new ProfileDocument { Shape = ProfileShape.Eased, Radius = us ? "1/8 in" : "3 mm" } },
            EdgeKind.Splash => new() { Kind = kind, Height = us ? "4 in" : "100 mm", TopWidth = us ? "3/4 in" : "19 mm" },
            EdgeKind.Waterfall => new() { Kind = kind, Drop = us ? "34 1/2 in" : "876 mm" },
            _ => new() { Kind = kind },
        };
    }
}
