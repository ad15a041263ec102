using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Server.Http;

namespace Lapwise.Server.Features.Jobs;

/// <summary>Reads a job document out of a request. Faults in what was entered do not stop it; a newer shape does.</summary>
internal static class JobBodies
{
    public static async Task<(JobDocument? Document, IResult? Refusal)> Read(HttpRequest request, CancellationToken cancel)
    {
        var (document, refusal) = await Bodies.Read(request, JobJson.Default.JobDocument, cancel);
        if (document is null || document.Lapwise is >= 1 and <= JobDocument.CurrentVersion) return (document, refusal);
        var newer = new Fault("lapwise", "VersionNotKnown",
            v => v.Say($"Version {document.Lapwise} of the job document is not known.", $"No se conoce la versión {document.Lapwise} del documento."),
            v => v.Say($"This program reads versions up to {JobDocument.CurrentVersion}: update it.", $"Este programa lee versiones hasta la {JobDocument.CurrentVersion}: actualícelo."));
        return (null, Problems.Faults(StatusCodes.Status400BadRequest, [newer], Voices.Of(request)));
    }
}
