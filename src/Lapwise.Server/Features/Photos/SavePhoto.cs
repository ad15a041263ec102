using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Photos;

/// <summary><c>PUT /api/photos/{id}</c>: keeps a photo under the SHA-256 of its content; sent twice it is there once.</summary>
internal static class SavePhoto
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPut("/photos/{id}", Answer).WithName("SavePhoto").WithTags("Photos").WithSummary("Keeps a JPEG under the SHA-256 of its content.")
            .Accepts<byte[]>("image/jpeg")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge);

    private static async Task<IResult> Answer(string id, HttpRequest request, PhotoFiles photos, CancellationToken cancel)
    {
        if (request.ContentLength > PhotoFiles.MostBytes) return Refused(PhotoAnswer.TooLarge);
        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body, cancel);
        var answer = await photos.Save(id, body.ToArray(), cancel);
        return answer == PhotoAnswer.Kept ? Results.NoContent() : Refused(answer);
    }

    private static IResult Refused(PhotoAnswer answer) => answer switch
    {
        PhotoAnswer.TooLarge => Problems.Photo(StatusCodes.Status413PayloadTooLarge, $"A photo has at most {PhotoFiles.MostBytes / 1000} kB."),
        PhotoAnswer.OtherContent => Problems.Photo(StatusCodes.Status400BadRequest, "The content is not what its SHA-256 says: it was changed on the way."),
        PhotoAnswer.TellsMore => Problems.Photo(StatusCodes.Status400BadRequest, "The photo still says where, when or by what it was taken: take that out first."),
        _ => Problems.Photo(StatusCodes.Status400BadRequest, "This is not a whole JPEG."),
    };
}
