using System.Net;
using System.Text.Json;
using Lapwise.Core.Jobs;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests;

public sealed class FirstStartTests
{
    [Fact]
    public async Task A_new_database_has_the_sample_job_and_the_sample_coatings_it_uses()
    {
        await using var server = await RunningServer.OnNewDatabase();
        var demo = await Body(await server.Send(HttpMethod.Get, "/api/jobs/demo"));
        var products = (await Body(await server.Send(HttpMethod.Get, "/api/products"))).EnumerateArray().Select(p => p.GetProperty("id").GetString()).ToList();
        var used = demo.GetProperty("system").EnumerateArray().Select(c => c.GetProperty("product").GetString()).ToList();
        Assert.NotEmpty(used);
        Assert.All(used, id => Assert.Contains(id, products));
    }

    /// <summary>Every word is said in Spanish: what is the same in both is what nobody reads, such as a kind or a quantity.</summary>
    [Fact]
    public async Task The_samples_are_made_in_the_language_of_whoever_asks_first()
    {
        await using var english = await RunningServer.OnNewDatabase();
        await using var spanish = await RunningServer.OnNewDatabase();
        foreach (var address in new[] { "/api/jobs/demo" }.Concat(
            (await Body(await english.Send(HttpMethod.Get, "/api/products"))).EnumerateArray().Select(p => "/api/products/" + p.GetProperty("id").GetString())))
        {
            var (en, es) = (Said(await Body(await english.Send(HttpMethod.Get, address))), Said(await Body(await spanish.Send(HttpMethod.Get, address, language: "es-MX"))));
            Assert.Equal(en.Keys, es.Keys);
            var told = en.Where(s => s.Key.EndsWith(".name", StringComparison.Ordinal) || s.Key.EndsWith(".color", StringComparison.Ordinal) || s.Value.Count(c => c == ' ') > 2).ToList();
            Assert.NotEmpty(told);
            Assert.All(told, s => Assert.NotEqual(s.Value, es[s.Key]));
        }

        // Who asks later finds them as they are.
        Assert.Equal("es", (await Body(await spanish.Send(HttpMethod.Get, "/api/jobs/demo"))).GetProperty("language").GetString());
        await spanish.Restart();
        Assert.StartsWith("Cocina", (await Body(await spanish.Send(HttpMethod.Get, "/api/jobs/demo"))).GetProperty("name").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Many_who_ask_at_once_find_the_samples_once()
    {
        await using var server = await RunningServer.OnNewDatabase();
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => server.Send(HttpMethod.Get, "/api/jobs/demo", language: i % 2 == 0 ? "es" : "en")));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.OK, a.StatusCode));
        Assert.Single((await Task.WhenAll(answers.Select(Body))).Select(b => b.GetProperty("name").GetString()).Distinct());
    }

    /// <summary>SQLite takes its log of writes away with the last connection: while it is there, one is kept open.</summary>
    [Fact]
    public async Task No_connection_to_the_database_stays_open_after_a_request()
    {
        await using var server = await RunningServer.OnNewDatabase();
        await server.Send(HttpMethod.Get, "/api/jobs/demo");
        Assert.NotEmpty(Directory.GetFiles(server.Settings.DataFolder, "*.db"));
        Assert.Empty(Directory.GetFiles(server.Settings.DataFolder, "*-wal"));
    }

    /// <summary>Every text of a document under its path.</summary>
    private static SortedDictionary<string, string> Said(JsonElement element)
    {
        var found = new SortedDictionary<string, string>(StringComparer.Ordinal);
        Collect("", element);
        return found;

        void Collect(string path, JsonElement e)
        {
            if (e.ValueKind == JsonValueKind.String) found[path] = e.GetString()!;
            else if (e.ValueKind == JsonValueKind.Object) foreach (var p in e.EnumerateObject()) Collect(path + "." + p.Name, p.Value);
            else if (e.ValueKind == JsonValueKind.Array) foreach (var (item, i) in e.EnumerateArray().Select((x, i) => (x, i))) Collect($"{path}[{i}]", item);
        }
    }

    [Fact]
    public async Task A_sample_job_taken_out_stays_out_after_a_restart()
    {
        await using var server = await RunningServer.OnNewDatabase();
        Assert.Equal(HttpStatusCode.OK, (await server.Send(HttpMethod.Delete, "/api/jobs/demo", ifMatch: "1")).StatusCode);
        await server.Restart();
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/jobs/demo")).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await server.Send(HttpMethod.Put, "/api/jobs/demo", Json(new JobDocument()), ifNone: true)).StatusCode);
    }
}
