using System.Net;
using System.Text;

namespace Lapwise.Browser.Tests;

/// <summary>
/// The server through a door that hands out another version's list of files once it is asked to, as after a publish. A route in
/// the browser would not do: what a worker fetches for itself passes by it.
/// </summary>
internal sealed class NextVersionDoor : IDisposable
{
    private readonly HttpListener listener = new();
    private readonly HttpClient behind;

    public NextVersionDoor(string server, int port)
    {
        Address = $"http://127.0.0.1:{port}";
        behind = new HttpClient { BaseAddress = new Uri(server) };
        listener.Prefixes.Add(Address + "/");
        listener.Start();
        _ = Answer();
    }

    public string Address { get; }

    public bool IsPublishedAnew { get; set; }

    public void Dispose()
    {
        listener.Close();
        behind.Dispose();
    }

    private async Task Answer()
    {
        while (listener.IsListening)
        {
            HttpListenerContext asked;
            try
            {
                asked = await listener.GetContextAsync();
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                return;
            }

            _ = Forward(asked);
        }
    }

    private async Task Forward(HttpListenerContext asked)
    {
        using var answer = asked.Response;
        try
        {
            using var request = new HttpRequestMessage(new HttpMethod(asked.Request.HttpMethod), asked.Request.RawUrl);
            using var got = await behind.SendAsync(request);
            var bytes = await got.Content.ReadAsByteArrayAsync();
            if (IsPublishedAnew && asked.Request.RawUrl!.EndsWith("service-worker-assets.js", StringComparison.Ordinal))
                bytes = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(bytes).Replace("\"version\": \"", "\"version\": \"next", StringComparison.Ordinal));
            answer.StatusCode = (int)got.StatusCode;
            answer.ContentType = got.Content.Headers.ContentType?.ToString();
            answer.Headers["Cache-Control"] = "no-cache";
            await answer.OutputStream.WriteAsync(bytes);
        }
        catch (Exception e) when (e is HttpRequestException or HttpListenerException or ObjectDisposedException)
        {
            // The page went away while it was answered.
        }
    }
}
