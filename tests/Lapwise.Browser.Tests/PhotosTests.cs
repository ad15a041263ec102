using System.Text;
using System.Text.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>A photo from the camera to the shop's computer: small, silent about where it was taken, and never lost.</summary>
public sealed class PhotosTests(PublishedServer server)
{
    [Fact]
    public async Task A_photo_taken_without_a_server_is_small_tells_nothing_of_its_place_and_arrives_by_itself()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{id}/measure");
        var camera = WithPlace(Convert.FromBase64String(await page.EvaluateAsync<string>("""
            () => {
              const c = document.createElement("canvas");
              [c.width, c.height] = [3000, 2000];
              const pen = c.getContext("2d");
              for (let i = 0; i < 4000; i++) { pen.fillStyle = `hsl(${i * 7 % 360} 80% ${i % 90}%)`; pen.fillRect(i * 37 % 3000, i * 53 % 2000, 120, 90); }
              return c.toDataURL("image/jpeg", 0.95).split(",")[1];
            }
            """)));
        Assert.Contains("Exif", Encoding.Latin1.GetString(camera), StringComparison.Ordinal);
        string photo;
        await server.StopServer();
        try
        {
            await page.Locator("#photo-of-0").SetInputFilesAsync(new FilePayload { Name = "x.jpg", MimeType = "image/jpeg", Buffer = camera });
            await Expect(page.GetByAltText("Photo 1 of")).ToBeVisibleAsync();
            await page.Field("What photo 1 shows").FillAsync("Pipe in the corner");
            await Expect(page.GetByAltText("Pipe in the corner")).ToBeVisibleAsync();
            Assert.Equal("1600,1067", await page.EvaluateAsync<string>("(i => `${i.naturalWidth},${i.naturalHeight}`)(document.querySelector('.photos img'))"));
            await page.Kept("The server does not answer");
        }
        finally
        {
            await server.StartServer();
        }
        await page.Kept("Saved");
        photo = JsonDocument.Parse(await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken)).RootElement.GetProperty("tops")[0].GetProperty("photos")[0].GetProperty("id").GetString()!;
        byte[]? arrived = null;
        for (var tries = 0; tries < 150 && arrived is null; tries++)
        {
            using var answer = await server.Http.GetAsync("/api/photos/" + photo, TestContext.Current.CancellationToken);
            if (answer.IsSuccessStatusCode) arrived = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
            else await Task.Delay(200, TestContext.Current.CancellationToken);
        }
        Assert.InRange(arrived!.Length, 1000, 900_000);
        Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(arrived), StringComparison.Ordinal);

        // Another device gets it from the server; taken out, it can be put back.
        await using var otherWindow = await server.Window();
        var other = await otherWindow.Open($"/jobs/{id}/measure");
        await Expect(other.GetByAltText("Pipe in the corner")).ToBeVisibleAsync();
        Assert.Empty((await other.RunAxe()).Violations.Select(v => v.Id));
        await other.GetByRole(AriaRole.Button, new() { Name = "Take out photo 1" }).ClickAsync();
        await Expect(other.GetByAltText("Pipe in the corner")).ToHaveCountAsync(0);
        await other.GetByText("A photo was taken out.").GetByRole(AriaRole.Button).ClickAsync();
        await Expect(other.GetByAltText("Pipe in the corner")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_file_that_is_no_picture_is_said_to_be_none()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.Locator("#photo-of-0").SetInputFilesAsync(new FilePayload { Name = "x.jpg", MimeType = "image/jpeg", Buffer = "not a picture"u8.ToArray() });
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("cannot be read as a picture");
    }

    /// <summary>Puts in what a camera does: Exif with a GPS directory (Exif 2.32, 4.6.6): latitude 47° 30' N.</summary>
    private static byte[] WithPlace(byte[] jpeg)
    {
        byte[] tiff =
        [
            (byte)'M', (byte)'M', 0, 42, 0, 0, 0, 8,
            // One entry: the GPS directory lies at 26.
            0, 1, 0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 26, 0, 0, 0, 0,
            // Two entries: reference "N", latitude as three fractions at 56.
            0, 2, 0, 1, 0, 2, 0, 0, 0, 2, (byte)'N', 0, 0, 0, 0, 2, 0, 5, 0, 0, 0, 3, 0, 0, 0, 56, 0, 0, 0, 0,
            0, 0, 0, 47, 0, 0, 0, 1, 0, 0, 0, 30, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 1,
        ];
        byte[] exif = [.. "Exif\0\0"u8, .. tiff];
        return [.. jpeg[..2], 0xFF, 0xE1, (byte)((exif.Length + 2) >> 8), (byte)(exif.Length + 2), .. exif, .. jpeg[2..]];
    }
}
