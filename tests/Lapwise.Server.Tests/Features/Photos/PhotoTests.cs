using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text;
using Lapwise.Store;

namespace Lapwise.Server.Tests.Features.Photos;

/// <summary>Photos by their content, and only those that tell nothing but the picture.</summary>
public sealed class PhotoTests(RunningServer server) : IClassFixture<RunningServer>
{
    /// <summary>Two by two pixels, as a browser's canvas writes it.</summary>
    private static readonly byte[] Plain = Convert.FromBase64String(
        "/9j/4AAQSkZJRgABAQAAAQABAAD/4gHYSUNDX1BST0ZJTEUAAQEAAAHIAAAAAAQwAABtbnRyUkdCIFhZWiAH4AABAAEAAAAAAABhY3NwAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAQAA9tYAAQAAAADTLQAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAlkZXNjAAAA8AAAACRyWFlaAAABFAAAABRnWFlaAAABKAAAABRiWFlaAAABPAAAABR3dHB0AAABUAAAABRyVFJDAAABZAAAAChnVFJDAAABZAAAAChiVFJDAAABZAAAAChjcHJ0AAABjAAAADxtbHVjAAAAAAAAAAEAAAAMZW5VUwAAAAgAAAAcAHMAUgBHAEJYWVogAAAAAAAAb6IAADj1AAADkFhZWiAAAAAAAABimQAAt4UAABjaWFlaIAAAAAAAACSgAAAPhAAAts9YWVogAAAAAAAA9tYAAQAAAADTLXBhcmEAAAAAAAQAAAACZmYAAPKnAAANWQAAE9AAAApbAAAAAAAAAABtbHVjAAAAAAAAAAEAAAAMZW5VUwAAACAAAAAcAEcAbwBvAGcAbABlACAASQBuAGMALgAgADIAMAAxADb/2wBDABsSFBcUERsXFhceHBsgKEIrKCUlKFE6PTBCYFVlZF9VXVtqeJmBanGQc1tdhbWGkJ6jq62rZ4C8ybqmx5moq6T/2wBDARweHigjKE4rK06kbl1upKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKT/wAARCAACAAIDASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAb/xAAUEAEAAAAAAAAAAAAAAAAAAAAA/8QAFAEBAAAAAAAAAAAAAAAAAAAAAP/EABQRAQAAAAAAAAAAAAAAAAAAAAD/2gAMAwEAAhEDEQA/AJkAH//Z");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_photo_is_kept_once_under_its_content_and_given_back()
    {
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/api/photos/" + IdOf([1, 2]), Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, await Put(IdOf(Plain), Plain));
        Assert.Equal(HttpStatusCode.NoContent, await Put(IdOf(Plain), Plain));
        using var answer = await server.Http.GetAsync("/api/photos/" + IdOf(Plain), Cancel);
        Assert.Equal("image/jpeg", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(Plain, await answer.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Contains("immutable", answer.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(Path.Combine(server.Settings.DataFolder, "photos")));
    }

    /// <summary>Segments that carry place, time, camera or remarks: Exif and XMP (APP1), IPTC (APP13), comment.</summary>
    [Theory]
    [InlineData(0xE1, "Exif\0\0MM\0*\0\0\0\b")]
    [InlineData(0xE1, "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta/>")]
    [InlineData(0xED, "Photoshop 3.0\08BIM")]
    [InlineData(0xFE, "taken at the mill")]
    public async Task A_photo_that_tells_more_than_the_picture_is_refused(int marker, string content)
    {
        byte[] jpeg = [.. Plain[..2], .. Segment((byte)marker, content), .. Plain[2..]];
        Assert.Equal(HttpStatusCode.BadRequest, await Put(IdOf(jpeg), jpeg));
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/api/photos/" + IdOf(jpeg), Cancel)).StatusCode);
    }

    [Fact]
    public async Task What_is_no_whole_photo_or_not_what_its_id_says_or_too_large_is_refused()
    {
        Assert.Equal(HttpStatusCode.BadRequest, await Put(IdOf([1, 2]), Plain));
        Assert.Equal(HttpStatusCode.BadRequest, await Put(IdOf(Plain[..^20]), Plain[..^20]));
        Assert.Equal(HttpStatusCode.BadRequest, await Put(IdOf([]), []));
        var huge = new byte[PhotoFiles.MostBytes + 1];
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await Put(IdOf(huge), huge));
        Assert.Equal(HttpStatusCode.BadRequest, await Put("..%2f..%2flapwise", Plain));
    }

    [Fact]
    public async Task A_photo_no_job_refers_to_for_a_month_is_swept_and_others_stay()
    {
        var folder = Directory.CreateTempSubdirectory("lapwise-").FullName;
        var photos = new PhotoFiles(folder);
        Assert.Equal(PhotoAnswer.Kept, await photos.Save(IdOf(Plain), Plain, Cancel));
        var now = DateTimeOffset.UtcNow;
        photos.Sweep(new HashSet<string>(), now.AddDays(29));
        Assert.NotNull(photos.Find(IdOf(Plain)));
        photos.Sweep(new HashSet<string> { IdOf(Plain) }, now.AddDays(40));
        photos.Sweep(new HashSet<string>(), now.AddDays(60));
        Assert.NotNull(photos.Find(IdOf(Plain)));
        photos.Sweep(new HashSet<string>(), now.AddDays(71));
        Assert.Null(photos.Find(IdOf(Plain)));
        Directory.Delete(folder, recursive: true);
    }

    private async Task<HttpStatusCode> Put(string id, byte[] jpeg)
    {
        using var content = new ByteArrayContent(jpeg) { Headers = { ContentType = new MediaTypeHeaderValue("image/jpeg") } };
        using var answer = await server.Http.PutAsync("/api/photos/" + id, content, Cancel);
        return answer.StatusCode;
    }

    private static string IdOf(byte[] content) => Convert.ToHexStringLower(SHA256.HashData(content));

    private static byte[] Segment(byte marker, string content)
    {
        var bytes = Encoding.Latin1.GetBytes(content);
        return [0xFF, marker, (byte)((bytes.Length + 2) >> 8), (byte)(bytes.Length + 2), .. bytes];
    }
}
