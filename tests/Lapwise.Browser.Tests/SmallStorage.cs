using Microsoft.Playwright;

namespace Lapwise.Browser.Tests;

/// <summary>
/// A device with little room: the browser's own limit for the page's origin, filled to the brim by other data of it. The browser
/// asks for what is left only now and then, so the limit is set before the page first keeps anything.
/// </summary>
internal sealed class SmallStorage
{
    /// <summary>Room for the page's files, its jobs and some more.</summary>
    private const int LimitBytes = 60_000_000;

    private readonly IPage page;

    private SmallStorage(IPage page) => this.page = page;

    /// <summary>Before the page is opened; for as long as its window lasts.</summary>
    public static async Task<SmallStorage> Of(IPage page, string origin)
    {
        var wire = await page.Context.NewCDPSessionAsync(page);
        await wire.SendAsync("Storage.overrideQuotaForOrigin", new() { ["origin"] = origin, ["quotaSize"] = LimitBytes });
        return new SmallStorage(page);
    }

    /// <summary>In ever smaller pieces, until not even a small one finds room.</summary>
    public async Task Fill() => await page.EvaluateAsync("""
        async () => {
          const asked = indexedDB.open("filler", 1);
          asked.onupgradeneeded = () => asked.result.createObjectStore("pieces", { autoIncrement: true });
          const filler = await new Promise((done, failed) => { asked.onsuccess = () => done(asked.result); asked.onerror = () => failed(asked.error); });
          const put = bytes => new Promise(done => {
            const change = filler.transaction("pieces", "readwrite");
            change.objectStore("pieces").add(crypto.getRandomValues(new Uint8Array(bytes)));
            change.oncomplete = () => done(true);
            change.onabort = () => done(change.error.name !== "QuotaExceededError");
          });
          for (let bytes = 65_536; bytes >= 16; bytes /= 4) while (await put(bytes));
          filler.close();
        }
        """);

    public async Task MakeRoom() => await page.EvaluateAsync("""
        () => new Promise((done, failed) => {
          const asked = indexedDB.deleteDatabase("filler");
          asked.onsuccess = () => done();
          asked.onerror = () => failed(asked.error);
        })
        """);
}
