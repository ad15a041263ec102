using Lapwise.Client.Keeping;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work.Remedies;

namespace Lapwise.Client.Phases.Work;

/// <summary>A remedy put in the document.</summary>
internal static class TakingUp
{
    /// <summary>The change; null where a document cannot hold it: the weather, a test board, a warmer can.</summary>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    public static Func<JobDocument, JobDocument>? Of(Remedy remedy, int coat, JobDocument document)
    {
        if (remedy.Tried is not { } tried) return null;
        var written = new Voice(document.Language, document.Units);
        return remedy.Kind switch
        {
            RemedyKind.NarrowerSections => d => d with { Aims = (d.Aims ?? new AimsDocument()) with { LargestSection = new Entry(written.Area(tried.Job.Aims.LargestSectionM2)) } },
            RemedyKind.LargerBatch => d => d with { Tools = (d.Tools ?? new ToolsDocument()) with { LargestBatch = new Entry(written.Volume(tried.Job.Tools.LargestBatchMl)) } },
            RemedyKind.HelperMixes or RemedyKind.AnotherPersonRolls => d => d with
            {
                Crew = [.. d.Crew, .. tried.Job.Crew.Skip(d.Crew.Count).Select(p => new PersonDocument { Name = p.Name, Pace = d.Crew.Count > 0 ? d.Crew[^1].Pace : null })],
            },
            RemedyKind.BreakAtCorner or RemedyKind.BreakNearEnd or RemedyKind.BreakInMiddle => d => d with { Tops = [.. d.Tops.Select(t => WithBreaks(t, tried, written))] },
            RemedyKind.SlowerProduct => d => d with
            {
                System = d.System.With(coat, c => c with { Product = tried.Job.System[0].Product.Id, WetFilm = new Entry(written.Film(tried.Job.System[0].WetFilm.Micrometres)), TestBoardOpenTime = null, TestBoardFirstBad = null }),
            },
            _ => null,
        };
    }

    private static TopDocument WithBreaks(TopDocument top, Attempt tried, Voice written)
    {
        var breaks = tried.Measured.Tops.FirstOrDefault(t => t.Top.Name == top.Name)?.Top.Breaks.Skip(top.Breaks?.Count ?? 0).ToList() ?? [];
        return breaks.Count == 0 ? top : top with { Breaks = [.. top.Breaks ?? [], .. breaks.Select(b => new BreakDocument { Side = b.Side.ToString(), At = new Entry(written.Length(b.AtM)) })] };
    }
}
