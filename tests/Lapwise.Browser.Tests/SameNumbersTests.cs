using System.Globalization;
using System.Text.Json;
using Lapwise.Core;
using Lapwise.Core.Jobs;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Lapwise.Browser.Tests;

/// <summary>One core, two machines: what the page works out in the browser is what the server answers.</summary>
public sealed class SameNumbersTests(PublishedServer server)
{
    /// <summary>Relative. The code is the same; a machine's own sine or exponential may differ in its last digits.</summary>
    private const double Tolerance = 1e-9;

    internal static readonly string[] Sums =
    [
        "width?shape=ogee&thickness=38 mm&radius=6 mm&run=3 m",
        "film?wet=6 mil&solids=62 %&thinner=2 %&coats=2",
        "spread?area=48 ft2&wet=6 mil&solids=62 %&loss=10 %&rough=30 um&used=28 floz",
        "mix?by=mass&a=100&b=34&densityA=1.42 g/mL&densityB=1.01 g/mL&total=24 floz",
        "voc?a=2&b=1&vocA=80 g/L&vocB=120 g/L&waterA=27.5 %&thinner=2 %",
        "dew-point?air=68 °F&humidity=60 %&surface=66 °F",
        "day?mean=68 °F&humidity=70 %&swing=25 °F",
        "open-time?time=11 min&at=73 °F&time2=7 min&at2=90 °F&surface=80 °F&evaporation=60 %&humidity=35 %",
        "pot-life?time=40 min&at=77 °F&of=100 g&time2=24 min&at2=77 °F&of2=1 kg&mass=3 lb&material=77 °F&ends=overheats",
        "cure?time=4 h&at=73 °F&room=65 °F&swing=18 °F",
        "vapour?of=acetone&amount=2 floz&over=10 min&length=12 ft&width=15 ft&height=8 ft&changes=4",
    ];

    [Fact]
    public async Task A_quick_sum_is_the_same_number_in_the_browser_and_on_the_server()
    {
        await using var window = await server.Window();
        var page = await window.NewPageAsync();
        foreach (var sum in Sums) await SameOn(page, Escaped(sum));
    }

    private async Task SameOn(IPage page, string address)
    {
        var numbers = (await Answer("/api/quick/" + address)).GetProperty("numbers").EnumerateArray().ToList();
        Assert.NotEmpty(numbers);
        await page.GotoAsync("/quick/" + address);
        await Expect(page.Locator(".quick-answer data").First).ToBeVisibleAsync(new() { Timeout = Pages.FirstStartMs });
        Assert.Equal(numbers.Count, await page.Locator(".quick-answer data").CountAsync());
        foreach (var number in numbers)
        {
            if (!number.TryGetProperty("value", out var value)) continue;
            var shown = page.Locator($".quick-answer data[data-is='{number.GetProperty("name").GetString()}']");
            Same(value.GetDouble(), await Value(shown), number.GetProperty("name").GetString()!);
        }
    }

    [Fact]
    public async Task A_whole_job_is_the_same_in_the_browser_and_on_the_server()
    {
        await using var window = await server.Window();
        var page = await window.Open("/jobs/demo/measure");
        var takeOff = (await Answer("/api/jobs/demo/takeoff")).GetProperty("tops")[0];
        foreach (var name in new[] { "flatM2", "edgeM2", "splashM2", "waterfallM2", "rimM2", "coatedM2" })
            Same(takeOff.GetProperty(name).GetDouble(), await Value(page.Locator($".take-off data[data-is='{name}']")), name);

        await page.Go("Materials");
        var materials = (await Answer("/api/jobs/demo/materials")).GetProperty("coats");
        await Expect(page.Locator("data[data-is='needMl']")).ToHaveCountAsync(materials.GetArrayLength());
        for (var coat = 0; coat < materials.GetArrayLength(); coat++)
            foreach (var name in new[] { "netMl", "lossMl", "needMl" })
                Same(materials[coat].GetProperty(name).GetDouble(), await Value(page.Locator($"data[data-is='{name}']").Nth(coat)), $"coat {coat + 1}, {name}");

        await page.Go("Order of work");
        await page.Planned();
        // The page shows the coat that laps; of its plan every margin and age, and every start to the millisecond.
        var margin = await Value(page.Locator("data[data-is='lapMarginS']"));
        var plan = (await Answer("/api/jobs/demo/plan")).GetProperty("coats").EnumerateArray().Single(c => Math.Abs(c.GetProperty("lapMarginS").GetDouble() - margin) < 1e-6);
        foreach (var name in new[] { "lapMarginS", "openTimeS", "worstLapAgeS", "worstSectionAgeS" })
            Same(plan.GetProperty(name).GetDouble(), await Value(page.Locator($"data[data-is='{name}']").First), name);
        var starts = plan.GetProperty("sections").EnumerateArray().Select(s => s.GetProperty("startS").GetDouble())
            .Concat(plan.GetProperty("batches").EnumerateArray().Select(b => b.GetProperty("mixStartS").GetDouble())).Order().ToList();
        var shown = (await page.Locator("data.step-clock").EvaluateAllAsync<string[]>("all => all.map(e => e.value)")).Select(t => double.Parse(t, CultureInfo.InvariantCulture)).Order().ToList();
        Assert.Equal(starts.Count, shown.Count);
        Assert.All(starts.Zip(shown), pair => Same(pair.First, pair.Second, "start"));
    }

    /// <summary>The page runs the core in the browser; here the same core runs on this machine, from the same document.</summary>
    [Fact]
    public async Task Room_purchase_and_days_are_the_same_in_the_browser_and_on_this_machine()
    {
        var cancel = TestContext.Current.CancellationToken;
        // Days may be settled for the sample itself; a copy is by itself.
        var id = await server.CopyOfDemo();
        var document = JsonSerializer.Deserialize(await server.Http.GetStringAsync("/api/jobs/" + id, cancel), JobJson.Default.JobDocument)!;
        var products = JsonSerializer.Deserialize(await server.Http.GetStringAsync("/api/products", cancel), JobJson.Default.IReadOnlyListProductDocument)!;
        var whole = WholeJob.From(document, products).Whole!;

        await using var window = await server.Window();
        var page = await window.Open($"/jobs/{id}/measure");
        await page.Go("Conditions");
        await Shown("dewPointC", [whole.Conditions.DewPointC]);
        await Shown("openTimeS", [.. whole.Conditions.Coats.Select(c => c.OpenTime.Seconds)]);
        await Shown("potLifeS", [.. whole.Conditions.Coats.Select(c => c.PotLife.Seconds)]);
        await Shown("dewMarginC", [.. whole.Conditions.Coats.Select(c => c.DewMarginC)]);
        await Shown("peakPpm", [.. whole.Conditions.Coats.SelectMany(c => c.Vapours).Select(v => v.PeakPpm)]);

        await page.Go("Supply");
        await Shown("needMl", [.. whole.Supply.Coats.Select(c => c.NeedMl)]);
        await Shown("leftOverMl", [.. whole.Supply.Coats.Select(c => c.LeftOverMl)]);
        await Shown("costTotal", [.. whole.Supply.Coats.Select(c => (double)c.CostTotal)]);

        await page.Go("Timeline");
        var midnight = whole.Timeline.Day1.ToDateTime(TimeOnly.MinValue);
        await Shown("useFromMin", [.. whole.Timeline.UseDates.Select(u => (u.From - midnight).TotalMinutes)]);
        await Shown("earliestMin", [.. whole.Timeline.Waits.Select(w => (w.Earliest - midnight).TotalMinutes)]);

        async Task Shown(string name, IReadOnlyList<double> here)
        {
            var shown = page.Locator($"data[data-is='{name}']");
            await Expect(shown).ToHaveCountAsync(here.Count, new() { Timeout = Pages.FirstStartMs });
            for (var i = 0; i < here.Count; i++) Same(here[i], await Value(shown.Nth(i)), $"{name} {i + 1}");
        }
    }

    [Fact]
    public async Task The_price_is_the_same_to_the_last_cent_in_the_browser_and_on_the_server()
    {
        var price = await Answer("/api/jobs/demo/price");
        await using var window = await server.Window();
        var page = await window.Open("/jobs/demo/money");
        foreach (var name in new[] { "total", "net", "floor", "margin", "markup" })
        {
            var said = price.GetProperty(name).GetDouble();
            // The floor moves once the chance of a line is worked out.
            await Expect(page.Locator($"data[data-is='{name}']")).ToHaveAttributeAsync("value", said.ToString("R", CultureInfo.InvariantCulture), new() { Timeout = Pages.FirstStartMs });
        }
    }

    internal static string Escaped(string sum) =>
        Uri.EscapeDataString(sum).Replace("%3F", "?", StringComparison.Ordinal).Replace("%3D", "=", StringComparison.Ordinal).Replace("%26", "&", StringComparison.Ordinal);

    private async Task<JsonElement> Answer(string address) =>
        JsonDocument.Parse(await server.Http.GetStringAsync(address, TestContext.Current.CancellationToken)).RootElement;

    private static async Task<double> Value(ILocator data) => double.Parse((await data.GetAttributeAsync("value"))!, CultureInfo.InvariantCulture);

    /// <summary>The miss of a fit is the little that two nearly equal times leave, as a share of them: it is held to 1e-9 of those.</summary>
    private static void Same(double server, double browser, string name) =>
        Assert.True(Math.Abs(server - browser) <= Tolerance * Math.Max(Math.Abs(server), name is "worstMiss" ? 1 : 1e-300), $"{name}: {server:R} on the server, {browser:R} in the browser");
}
