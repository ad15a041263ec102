using System.Net;
using System.Text;
using System.Text.Json;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>What is taken out, with the shop's computer and without it, and put back.</summary>
public sealed class TakingOutTests(PublishedServer server)
{
    [Fact]
    public async Task A_job_taken_out_without_reception_is_gone_here_at_once_and_there_when_the_server_is_back()
    {
        var (id, name) = (await server.CopyOfDemo(), "Taken out " + Guid.NewGuid().ToString("N"));
        await using var window = await server.Window(390, 844);
        var job = await window.Open($"/jobs/{id}/measure");
        await job.Field("Name of the job").FillAsync(name);
        await job.Kept("Saved");
        var page = await window.Open("/");
        var line = page.Locator("ul.jobs li", new() { HasText = name });
        await Expect(line).ToBeVisibleAsync();
        await page.Until($"lapwise.cupboard.read('jobs', '{id}').then(kept => kept?.length === 4)");
        await server.StopServer();
        try
        {
            await line.GetByRole(AriaRole.Button, new() { Name = "Take out " + name }).ClickAsync();
            await Expect(line).ToHaveCountAsync(0);
            var told = page.Locator(".notice", new() { HasText = "hears of it when it answers" });
            // A change of mind costs nothing; then it goes after all, over a reload too.
            await told.GetByRole(AriaRole.Button, new() { Name = "Put it back" }).ClickAsync();
            await Expect(line).ToBeVisibleAsync();
            await line.GetByRole(AriaRole.Button, new() { Name = "Take out " + name }).ClickAsync();
            await Expect(told).ToBeVisibleAsync();
        }
        finally
        {
            await server.StartServer();
        }
        await page.ReloadAsync();
        await Expect(page.Locator(".jobs").First).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await page.Until($"fetch('/api/jobs/{id}').then(a => a.status === 404)");
        await Expect(line).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_job_changed_elsewhere_before_its_removal_arrives_is_not_taken_out()
    {
        var (id, name) = (await server.CopyOfDemo(), "Stays " + Guid.NewGuid().ToString("N"));
        await using var window = await server.Window(390, 844);
        var job = await window.Open($"/jobs/{id}/measure");
        await job.Field("Name of the job").FillAsync(name);
        await job.Kept("Saved");
        var page = await window.Open("/");
        var line = page.Locator("ul.jobs li", new() { HasText = name });
        await page.RouteAsync($"**/api/jobs/{id}", route => route.Request.Method == "DELETE" ? route.AbortAsync() : route.ContinueAsync());
        await line.GetByRole(AriaRole.Button, new() { Name = "Take out " + name }).ClickAsync();
        await Expect(line).ToHaveCountAsync(0);

        await job.Field("Thickness").FillAsync("2 in");
        await job.Kept("Saved");
        await page.UnrouteAllAsync();
        await page.ReloadAsync();
        await Expect(page.Locator(".notice", new() { HasText = "changed elsewhere before it could be taken out" })).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await Expect(line).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_coating_is_taken_off_the_list_after_what_uses_it_is_said_and_put_back()
    {
        var (coating, name) = ("c" + Guid.NewGuid().ToString("N"), "Uses it " + Guid.NewGuid().ToString("N"));
        var stop = TestContext.Current.CancellationToken;
        var some = JsonDocument.Parse(await server.Http.GetStringAsync("/api/products", stop)).RootElement[0];
        var (like, text) = (some.GetProperty("id").GetString(), some.GetRawText());
        using var put = new HttpRequestMessage(HttpMethod.Put, "/api/products/" + coating) { Content = new StringContent(text.Replace($"\"{like}\"", $"\"{coating}\"", StringComparison.Ordinal), Encoding.UTF8, "application/json") };
        put.Headers.IfNoneMatch.ParseAdd("*");
        using var created = await server.Http.SendAsync(put, stop);
        Assert.Equal(HttpStatusCode.Created, created.StatusCode);
        using var used = new HttpRequestMessage(HttpMethod.Put, "/api/jobs/" + coating) { Content = new StringContent($$"""{ "lapwise": 1, "name": "{{name}}", "system": [{ "product": "{{coating}}" }] }""", Encoding.UTF8, "application/json") };
        used.Headers.IfNoneMatch.ParseAdd("*");
        using var job = await server.Http.SendAsync(used, stop);
        Assert.Equal(HttpStatusCode.Created, job.StatusCode);

        await using var window = await server.Window(390, 844);
        var page = await window.NewPageAsync();
        page.SetDefaultTimeout(30_000);
        await page.GotoAsync("/products/" + coating);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take this coating off the list …" }).ClickAsync(new() { Timeout = Pages.FirstStartMs });
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync(name);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it off the list" }).ClickAsync();
        await Expect(page.GetByText("is off the list")).ToBeVisibleAsync();
        using (var gone = await server.Http.GetAsync("/api/products/" + coating, stop)) Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it back" }).ClickAsync();
        await Expect(page.Locator($"a[href='products/{coating}']")).ToBeVisibleAsync();
        using var back = await server.Http.GetAsync("/api/products/" + coating, stop);
        Assert.Equal(HttpStatusCode.OK, back.StatusCode);
    }
}
