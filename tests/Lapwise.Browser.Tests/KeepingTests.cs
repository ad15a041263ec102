using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>Nothing typed is lost: not by a server that goes away, not by a second tab, not by a slip.</summary>
public sealed class KeepingTests(PublishedServer server)
{
    /// <summary>The list of jobs sends what is kept here while the new job is already open and typed into.</summary>
    [Fact]
    public async Task A_new_job_that_the_list_had_sent_first_is_typed_on_without_a_clash()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/");
        var (sentByTheList, typedOn) = (new TaskCompletionSource(), new TaskCompletionSource());
        await page.RouteAsync("**/api/jobs/*", async route =>
        {
            if (route.Request.Method == "PUT" && !sentByTheList.Task.IsCompleted)
            {
                using var first = new HttpRequestMessage(HttpMethod.Put, new Uri(route.Request.Url).PathAndQuery) { Content = new StringContent(route.Request.PostData!, Encoding.UTF8, "application/json") };
                first.Headers.IfNoneMatch.Add(EntityTagHeaderValue.Any);
                (await server.Http.SendAsync(first, TestContext.Current.CancellationToken)).EnsureSuccessStatusCode();
                sentByTheList.SetResult();
                await typedOn.Task;
            }

            await route.ContinueAsync();
        });
        await page.GetByRole(AriaRole.Button, new() { Name = "New job", Exact = true }).ClickAsync();
        await sentByTheList.Task.WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        await page.Field("Name of the job").FillAsync("Desk by the window");
        typedOn.SetResult();
        await page.Kept("Saved");
        await Expect(page.Locator("#clash")).ToHaveCountAsync(0);
        await Expect(page.Field("Name of the job")).ToHaveValueAsync("Desk by the window");
    }

    [Fact]
    public async Task What_is_typed_while_the_server_is_away_is_kept_and_saved_when_it_is_back()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{id}/measure");
        await server.StopServer();
        try
        {
            await page.Field("Whole back, side A").FillAsync("13' 3\"");
            await page.Kept("Kept on this device. The server does not answer");
            // The plan goes on without a server.
            await page.Go("Order of work");
            await page.Planned();
        }
        finally
        {
            await server.StartServer();
        }
        await page.Kept("Saved");
        var saved = JsonDocument.Parse(await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal("13' 3\"", saved.GetProperty("tops")[0].GetProperty("outline").GetProperty("length").GetString());
    }

    [Fact]
    public async Task What_is_typed_just_before_a_reload_is_still_there_after_it()
    {
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.Field("Whole back, side A").FillAsync("14' 1\"");
        await page.ReloadAsync();
        await Expect(page.Field("Whole back, side A")).ToHaveValueAsync("14' 1\"", new() { Timeout = Pages.FirstStartMs });
        await page.Kept("Saved");
    }

    [Fact]
    public async Task A_shape_tried_out_and_changed_back_loses_neither_sizes_nor_edges()
    {
        var id = await server.CopyOfDemo();
        var before = await Top();
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{id}/measure");
        foreach (var shape in new[] { "Circle", "Rectangle", "L" })
        {
            await page.Locator($"label[for='shape-0-{shape}']").ClickAsync();
            await page.Kept("Saved");
        }
        Assert.Equal(before, await Top());

        async Task<string> Top() =>
            JsonDocument.Parse(await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken)).RootElement.GetProperty("tops")[0].GetRawText();
    }

    [Theory]
    [InlineData("Keep what is here", "mine")]
    [InlineData("Take the other", "theirs")]
    public async Task Two_edits_of_one_place_are_both_kept_until_one_is_chosen(string choice, string expected)
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window();
        var first = await window.Open($"/jobs/{id}/measure");
        await using var otherWindow = await server.Window(390, 844);
        var second = await otherWindow.Open($"/jobs/{id}/measure");

        await first.Field("Name of the job").FillAsync($"theirs {id}");
        await first.Field("Thickness").FillAsync("2 in");
        await first.Kept("Saved");
        await second.Field("Name of the job").FillAsync($"mine {id}");
        var both = second.GetByRole(AriaRole.Region, new() { Name = "Name of the job" });
        await Expect(both).ToContainTextAsync($"mine {id}");
        await Expect(both).ToContainTextAsync($"theirs {id}");
        Assert.Empty((await second.RunAxe()).Violations.Select(v => v.Id));
        // Neither is lost by going away and coming back.
        await second.ReloadAsync();
        await both.GetByRole(AriaRole.Button, new() { Name = choice }).ClickAsync(new() { Timeout = Pages.FirstStartMs });
        await second.Kept("Saved");
        await Expect(second.Field("Name of the job")).ToHaveValueAsync($"{expected} {id}");
        // What did not meet is there either way.
        await Expect(second.Field("Thickness")).ToHaveValueAsync("2 in");

        var stored = await Stored(id);
        Assert.Equal($"{expected} {id}", stored.GetProperty("name").GetString());
        Assert.Equal("2 in", stored.GetProperty("tops")[0].GetProperty("thickness").GetString());
    }

    [Fact]
    public async Task Two_tabs_without_a_server_keep_what_was_typed_in_each_and_both_arrive()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var first = await window.Open($"/jobs/{id}/measure");
        var second = await window.Open($"/jobs/{id}/conditions");
        var list = await window.Open("/");
        await server.StopServer();
        try
        {
            await first.Field("Thickness").FillAsync("1 3/4 in");
            await second.Field("Air").FillAsync("66 °F");
            await first.Kept("Kept on this device. The server does not answer");
            await second.Kept("Kept on this device. The server does not answer");
            await first.CloseAsync();
            await second.CloseAsync();
        }
        finally
        {
            await server.StartServer();
        }
        await list.ReloadAsync();
        await Expect(list.Locator("li", new() { Has = list.Locator($"a[href='jobs/{id}']") })).ToContainTextAsync("changed just now", new() { Timeout = Pages.FirstStartMs });
        var stored = await Stored(id);
        Assert.Equal("1 3/4 in", stored.GetProperty("tops")[0].GetProperty("thickness").GetString());
        Assert.Equal("66 °F", stored.GetProperty("room").GetProperty("air").GetString());
    }

    [Fact]
    public async Task A_job_begun_without_a_server_is_there_once_it_answers_and_eight_hours_are_nothing()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.NewPageAsync();
        await page.Clock.InstallAsync();
        page.SetDefaultTimeout(30_000);
        await page.GotoAsync("/");
        await Expect(page.Locator(".jobs")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await Expect(page.GetByText("Larkhollow").First).ToBeVisibleAsync();
        // Every job of the list is fetched in the background.
        await page.Until("lapwise.cupboard.read('jobs', 'demo').then(kept => kept?.length === 4)");
        await server.StopServer();
        string name;
        try
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "New job", Exact = true }).ClickAsync();
            name = "Hearth " + Guid.NewGuid().ToString("N");
            await page.Field("Name of the job").FillAsync(name);
            await page.Kept("Kept on this device. The server does not answer");
            await page.Clock.FastForwardAsync("08:00:00");
            await page.GetByRole(AriaRole.Link, new() { Name = "Lapwise: list of jobs" }).ClickAsync();
            await Expect(page.Locator("li", new() { HasText = name })).ToContainTextAsync("only on this device");
            // A job of the server, too, opens and plans without it.
            await page.Locator("a[href='jobs/demo']").ClickAsync();
            await page.Go("Order of work");
            await page.Planned();
            await page.GetByRole(AriaRole.Link, new() { Name = "Lapwise: list of jobs" }).ClickAsync();
        }
        finally
        {
            await server.StartServer();
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "Try again" }).ClickAsync();
        await Expect(page.Locator("li", new() { HasText = name })).Not.ToContainTextAsync("only on this device", new() { Timeout = 30_000 });
        Assert.Contains(name, await server.Http.GetStringAsync("/api/jobs", TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("told")]
    // As when the connection was lost meanwhile: no event tells the page.
    [InlineData("without a word")]
    public async Task Storage_emptied_by_the_browser_is_filled_again_with_what_is_open(string how)
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{id}/measure");
        await server.StopServer();
        try
        {
            await page.Field("Thickness").FillAsync("1 1/4 in");
            await page.Kept("Kept on this device. The server does not answer");
            if (how == "told")
            {
                var wire = await window.NewCDPSessionAsync(page);
                await wire.SendAsync("Storage.clearDataForOrigin", new() { ["origin"] = server.Address, ["storageTypes"] = "indexeddb" });
            }
            else
            {
                await page.EvaluateAsync("lapwise.cupboard.use('drafts', 'readwrite', drafts => drafts.clear())");
            }

            await page.Until("lapwise.cupboard.heads('drafts', 3).then(all => all.length === 1)");
            await page.Field("Thickness").FillAsync("1 3/8 in");
        }
        finally
        {
            await server.StartServer();
        }
        await page.Kept("Saved");
        Assert.Equal("1 3/8 in", (await Stored(id)).GetProperty("tops")[0].GetProperty("thickness").GetString());
    }

    [Theory]
    [InlineData("IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); }", "keeps nothing on the device")]
    [InlineData("IDBObjectStore.prototype.put = () => { throw new DOMException('no', 'QuotaExceededError'); }", "storage of this device is full")]
    public async Task Storage_refused_or_full_is_said_and_a_file_is_offered(string trouble, string said)
    {
        await using var window = await server.Window(390, 844);
        await window.AddInitScriptAsync(trouble);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await server.StopServer();
        try
        {
            await page.Field("Thickness").FillAsync("1 1/4 in");
            await page.Kept("NOT kept");
            await page.Kept(said);
            var file = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Save a copy as a file" }).ClickAsync());
            Assert.Contains("1 1/4 in", await File.ReadAllTextAsync(await file.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
        finally
        {
            await server.StartServer();
        }
        await page.Kept("Saved");
    }

    /// <summary>The browser's own limit, not a script's: what was kept before stays, and what is typed meanwhile is kept as soon as there is room, without a key.</summary>
    [Fact]
    public async Task What_is_typed_on_a_full_device_is_said_to_be_in_the_page_alone_and_kept_once_there_is_room()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.NewPageAsync();
        var storage = await SmallStorage.Of(page, server.Address);
        await page.GotoAsync($"/jobs/{id}/measure");
        await Expect(page.Field("Thickness")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        var before = await page.Field("Thickness").InputValueAsync();
        await server.StopServer();
        try
        {
            await page.Field("Thickness").FillAsync("1 1/4 in");
            await page.Kept("Kept on this device. The server does not answer");
            await page.Until(Draft("1 1/4 in"));
            await storage.Fill();
            await page.Field("Name of the job").FillAsync("Too much for this device");
            await page.Kept("NOT kept");
            await page.Kept("storage of this device is full");
            var file = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Save a copy as a file" }).ClickAsync());
            Assert.Contains("Too much for this device", await File.ReadAllTextAsync(await file.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);
            await page.Until(Draft("1 1/4 in"));
            await storage.MakeRoom();
            await page.Kept("Kept on this device. The server does not answer");
            await page.Until(Draft("Too much for this device"));
        }
        finally
        {
            await server.StartServer();
        }
        await page.Kept("Saved");
        Assert.Equal("Too much for this device", (await Stored(id)).GetProperty("name").GetString());
        // The step that found no room is kept too, in its place: both can be taken back after a reload.
        await page.Until("lapwise.edits.read('" + id + "').then(kept => kept.steps.length === 2)");
        await page.ReloadAsync();
        var undo = page.GetByRole(AriaRole.Button, new() { Name = "Undo" });
        await undo.ClickAsync(new() { Timeout = Pages.FirstStartMs });
        await Expect(page.Field("Name of the job")).Not.ToHaveValueAsync("Too much for this device");
        await undo.ClickAsync();
        await Expect(page.Field("Thickness")).ToHaveValueAsync(before);

        static string Draft(string text) => $"lapwise.cupboard.heads('drafts', 4).then(all => all.length === 1 && all[0][3].includes('{text}'))";
    }

    [Fact]
    public async Task A_full_device_still_saves_on_the_server_and_says_that_it_keeps_nothing_itself()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.NewPageAsync();
        var storage = await SmallStorage.Of(page, server.Address);
        await page.GotoAsync($"/jobs/{id}/measure");
        await Expect(page.Field("Thickness")).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        await storage.Fill();
        await page.Field("Thickness").FillAsync("1 3/8 in");
        await page.Kept("Saved");
        await page.Kept("storage of this device is full");
        await Expect(page.Locator(".job-head")).ToContainTextAsync("no room to keep the steps");
        Assert.Equal("1 3/8 in", (await Stored(id)).GetProperty("tops")[0].GetProperty("thickness").GetString());
    }

    [Fact]
    public async Task What_was_just_typed_never_stands_there_as_saved()
    {
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/measure");
        await page.Kept("Saved");
        var shown = await page.Field("Thickness").EvaluateAsync<string>("""
            async field => {
              field.value = "1 3/8 in";
              field.dispatchEvent(new Event("input", { bubbles: true }));
              await new Promise(done => setTimeout(done));
              return document.querySelector(".kept").innerText;
            }
            """);
        Assert.Contains("saving", shown, StringComparison.Ordinal);
        await page.Kept("Saved");
    }

    [Fact]
    public async Task An_answer_lost_on_its_way_saves_once_and_half_an_answer_is_none()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{id}/measure");
        var puts = 0;
        await page.RouteAsync("**/api/jobs/" + id, async route =>
        {
            if (route.Request.Method != "PUT" || ++puts > 2)
            {
                await route.ContinueAsync();
                return;
            }

            var answer = await route.FetchAsync();
            if (puts == 1) await route.AbortAsync();
            else await route.FulfillAsync(new() { Response = answer, Status = 200, Body = "{ \"lapwise\": 1, \"na" });
        });
        await page.Field("Thickness").FillAsync("1 1/4 in");
        await page.Kept("Saved");
        using var stored = await server.Http.GetAsync("/api/jobs/" + id, TestContext.Current.CancellationToken);
        Assert.Equal("\"2\"", stored.Headers.ETag!.Tag);
        Assert.Contains("1 1/4 in", await stored.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_made_by_a_newer_version_is_said_to_be_one_and_given_out_as_it_is()
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        await window.RouteAsync("**/api/jobs/" + id, route => route.FulfillAsync(new() { Status = 200, ContentType = "application/json", Body = """{ "lapwise": 2, "name": "Later", "scent": "pine" }""" }));
        var page = await window.NewPageAsync();
        await page.GotoAsync("/jobs/" + id);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Made by a newer version" })).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        var file = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Save a copy as a file" }).ClickAsync());
        Assert.Contains("pine", await File.ReadAllTextAsync(await file.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    /// <summary>Whether this device has a copy of the job by then, or it has to come from the server.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task An_edit_that_another_version_left_on_the_device_is_told_of_and_never_written_over(bool isCopied)
    {
        var id = await server.CopyOfDemo();
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/");
        await page.EvaluateAsync($"lapwise.tab().then(tab => lapwise.cupboard.write('drafts', '{id}/' + tab, '1', 'Later', JSON.stringify({{ lapwise: 2, name: 'Later', scent: 'pine' }}), ''))");
        var copy = $"lapwise.cupboard.read('jobs', '{id}')";
        await page.WaitForFunctionAsync($"async () => await {copy} !== null");
        if (!isCopied) await page.EvaluateAsync($"lapwise.cupboard.remove('jobs', '{id}')");
        await page.Locator($"a[href='jobs/{id}']").ClickAsync();
        await page.Field("Thickness").FillAsync("1 1/4 in");
        await page.Kept("Saved");
        await Expect(page.GetByText("another version of Lapwise made")).ToBeVisibleAsync();
        var file = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Save a copy as a file" }).ClickAsync());
        Assert.Contains("pine", await File.ReadAllTextAsync(await file.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_saved_file_opens_as_a_new_job_and_a_wrong_one_says_why()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/");
        await page.GetByLabel("Open a saved file").SetInputFilesAsync(new FilePayload { Name = "x.json", MimeType = "application/json", Buffer = "{ \"nome\": 1 }"u8.ToArray() });
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("nome");
        var demo = await server.Http.GetByteArrayAsync("/api/jobs/demo", TestContext.Current.CancellationToken);
        await page.GetByLabel("Open a saved file").SetInputFilesAsync(new FilePayload { Name = "x.json", MimeType = "application/json", Buffer = demo });
        await Expect(page.Field("Whole back, side A")).ToHaveValueAsync("11' 0\"");
        await page.Kept("Saved");
    }

    private async Task<JsonElement> Stored(string id) =>
        JsonDocument.Parse(await server.Http.GetStringAsync("/api/jobs/" + id, TestContext.Current.CancellationToken)).RootElement;
}
