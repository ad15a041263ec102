using System.Text.Json;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>A coating typed from its data sheet, and changed.</summary>
public sealed class CoatingsTests(PublishedServer server)
{
    [Fact]
    public async Task A_coating_is_typed_from_its_sheet_kept_and_offered_in_a_job()
    {
        var id = "t" + Guid.NewGuid().ToString("N")[..10];
        await using var window = await server.Window(390, 844);
        var page = await window.Open("/products/new");
        await Expect(page.GetByText("not a number")).ToHaveCountAsync(0);
        await Type("name", "Bench clear " + id);
        await Type("id", id);
        await Type("mix-a", "two");
        await Expect(page.Locator("#at-mix-a-wrong")).ToContainTextAsync("not a number");
        await Type("mix-a", "2");
        await Type("mix-b", "1");
        await Type("densityA", "1.04 g/mL");
        await Type("densityB", "1.11 g/mL");
        await Type("volumeSolids", "62");
        await Expect(page.Locator("#at-volumeSolids-wrong")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the shop's list" }).ClickAsync();
        await Expect(page.Locator("#at-wetFilm-least-wrong")).ToBeVisibleAsync();
        Assert.Empty((await page.RunAxe()).Violations.Select(v => v.Id));
        // What is typed so far outlives a reload.
        await page.ReloadAsync();
        await Expect(page.Locator("#at-densityB")).ToHaveValueAsync("1.11 g/mL", new() { Timeout = Pages.FirstStartMs });

        await Type("volumeSolids", "62 %");
        await Type("wetFilm-least", "6 mil");
        await Type("wetFilm-most", "7.5 mil");
        await Type("potLife-0--time", "45 min");
        await Type("potLife-0--at", "73 °F");
        await Type("openTime-0--time", "11 min");
        await Type("openTime-0--at", "73 °F");
        await Type("limits-airLeast", "60 °F");
        await Type("limits-airMost", "85 °F");
        await Type("limits-humidityMost", "75 %");
        await Type("kits-0--size", "24 fl oz");
        await Type("kits-0--price", "84,50");
        await page.GetByLabel("isocyanates").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the shop's list" }).ClickAsync();
        await Expect(page.Locator(".keep-product [role=status]")).ToHaveTextAsync("As in the shop's list");

        var stored = JsonDocument.Parse(await server.Http.GetStringAsync("/api/products/" + id, TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal(84.5m, stored.GetProperty("kits")[0].GetProperty("price").GetDecimal());
        Assert.Equal("isocyanate", stored.GetProperty("hazards")[0].GetString());
        await page.GotoAsync("/jobs/demo/materials");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Bench clear " + id })).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });

        Task Type(string field, string text) => page.Locator("#at-" + field).FillAsync(text);
    }

    [Fact]
    public async Task A_coat_is_put_on_some_of_the_tops_and_follows_a_top_to_its_new_name()
    {
        await using var window = await server.Window(390, 844);
        var page = await window.Open($"/jobs/{await server.CopyOfDemo()}/materials");
        var coat = page.GetByRole(AriaRole.Region, new() { Name = "Coat 1" });
        var need = coat.Locator("[data-is=needMl]");
        var onBoth = await need.TextContentAsync(new() { Timeout = Pages.FirstStartMs });
        await coat.GetByLabel("Sink run").UncheckAsync();
        await Expect(need).Not.ToHaveTextAsync(onBoth!);
        // It stays on the last of its tops.
        await Expect(coat.GetByLabel("Island")).ToBeDisabledAsync();

        await page.Go("Measure");
        await page.GetByRole(AriaRole.Button, new() { Name = "Island" }).First.ClickAsync();
        await page.Field("Name of the top").FillAsync("Island by the window");
        await page.Go("Order of work");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "on Island by the window" })).ToBeVisibleAsync();
        Assert.Empty(page.Errors());
    }
}
