using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Photos;

/// <summary><c>GET /api/photos/{id}</c>: the photo with this SHA-256; it never changes.</summary>
internal static class ReadPhoto
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/photos/{id}", Answer).WithName("ReadPhoto").WithTags("Photos").WithSummary("The photo with this SHA-256.")
            .Produces(StatusCodes.Status200OK, contentType: "image/jpeg")
            .ProducesProblem(StatusCodes.Status404NotFound);

    private static IResult Answer(string id, HttpContext http, PhotoFiles photos)
    {
        if (photos.Find(id) is not { } path) return Problems.NotFound();
        http.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.File(path, "image/jpeg");
    }
}
