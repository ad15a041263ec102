using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Shelf;

/// <summary><c>POST /api/shelf/entries</c>: writes entries into the log, all or none; one that is there already changes nothing.</summary>
internal static class AppendToShelf
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/shelf/entries", Answer).WithName("AppendToShelf").WithTags("Shelf").WithSummary("Writes entries into the log, all or none; one that is there already changes nothing.")
            .Accepts<IReadOnlyList<ShelfEntryDocument>>("application/json")
            .Produces<ShelfDocument>().ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(HttpRequest request, ShelfLog log, ProductShelf products, CancellationToken cancel)
    {
        var (entries, refusal) = await Bodies.Read(request, JobJson.Default.IReadOnlyListShelfEntryDocument, cancel);
        if (entries is null) return refusal!;
        var voice = Voices.Of(request);
        var before = await log.All(cancel);
        var known = before.Select(e => e.Id).ToHashSet(StringComparer.Ordinal);
        IReadOnlyList<ShelfEntryDocument> added = [.. entries.Where(e => !known.Contains(e.Id))];

        // Read after what stands in the log, so that a fault of an older entry is not held against a new one.
        var all = JobReading.ReadProducts(new JobDocument(), await products.All(cancel));
        var read = ShelfReading.Read(new ShelfDocument { Entries = [.. before, .. added] }, all, voice.Units);
        IReadOnlyList<Fault> faults = [.. read.Faults.Select(f => (Fault: f, Place: PlaceOf(f.Path))).Where(f => f.Place >= before.Count)
            .Select(f => f.Fault with { Path = f.Fault.Path.Replace($"entries[{f.Place}]", $"entries[{f.Place - before.Count}]", StringComparison.Ordinal) })];
        if (faults.Count > 0) return Problems.Faults(StatusCodes.Status422UnprocessableEntity, faults, voice);
        if (added.FirstOrDefault(e => !DocumentId.IsUsable(e.Id)) is { } odd) return Problems.BadId(odd.Id);

        await log.Add(added, cancel);
        return Results.Ok(new ShelfDocument { Entries = [.. before, .. added] });
    }

    private static int PlaceOf(string path) =>
        path.StartsWith("entries[", StringComparison.Ordinal) && int.TryParse(path["entries[".Length..path.IndexOf(']', StringComparison.Ordinal)], out var place) ? place : -1;
}
