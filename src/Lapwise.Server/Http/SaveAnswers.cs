using Lapwise.Store;

namespace Lapwise.Server.Http;

/// <summary>What became of a change, as HTTP says it.</summary>
internal static class SaveAnswers
{
    /// <param name="folder">Address of the documents of this kind, as <c>/api/jobs</c>.</param>
    public static IResult Of<T>(HttpContext http, SaveOutcome<T> outcome, string folder, bool created)
    {
        switch (outcome)
        {
            case SaveOutcome<T>.Done(var now):
                Versions.Say(http, now.Version);
                return created ? Results.Created($"{folder}/{now.Id}", now.Document) : Results.Ok(now.Document);
            case SaveOutcome<T>.Clash(var inStore):
                Versions.Say(http, inStore.Version);
                return Problems.Clash(inStore.Version);
            default:
                return Problems.NotFound();
        }
    }
}
