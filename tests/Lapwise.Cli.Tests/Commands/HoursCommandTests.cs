using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Lapwise.Cli.Tests.Commands;

public sealed class HoursCommandTests
{
    private static readonly string Job = Shell.Sample("vanity.job.yaml");

    /// <summary>A day that starts cold and damp and turns fair, two readings an hour, with a gap at ten.</summary>
    private static string Logged()
    {
        var text = new StringBuilder("Time;Temperature °C;RH %\n");
        for (var half = 0; half < 48; half++)
        {
            var hour = half / 2.0;
            if (hour is >= 10 and < 11) continue;
            var celsius = 19 + (5 * Math.Cos((hour - 15) / 24 * 2 * Math.PI));
            text.Append(CultureInfo.InvariantCulture, $"2026-11-24 {(int)hour:00}:{half % 2 * 30:00};{celsius:0.0};{(hour < 5 ? 88 : 50)}\n");
        }

        return text.ToString().Replace('.', ',');
    }

    [Fact]
    public void A_logged_day_is_shown_hour_by_hour()
    {
        var shell = Shell.RunWith(Logged(), "hours", Job, "-", "--lang", "en", "--units", "us");
        Assert.Equal(Outcome.Done, shell.Outcome);
        shell.Matches("hours.en.us");
        Shell.RunWith(Logged(), "hours", Job, "-", "--lang", "es", "--units", "metric").Matches("hours.es.metric");
    }

    [Fact]
    public void Without_readings_the_room_swings_as_the_job_says()
    {
        var shell = Shell.Run("hours", Shell.Sample("l-kitchen.job.yaml"));
        Assert.Equal(Outcome.Done, shell.Outcome);
        Assert.Contains("The room as read is taken for the mean of the day; it swings by 8 °F", shell.Out.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.StartsWith("READINGS: There are no readings, and the job gives no daily swing.", Assert.Single(Shell.Run("hours", Job, "--lang", "en").Faults));
    }

    [Fact]
    public void As_json_it_says_each_hour_with_its_verdict_and_what_follows_the_best()
    {
        using var json = JsonDocument.Parse(Shell.RunWith(Logged(), "hours", Job, "-", "--json").Out);
        var coat = json.RootElement.GetProperty("coats")[0];
        Assert.Equal(24, coat.GetProperty("hours").GetArrayLength());
        Assert.Equal(["noGo", "unknown", "go"], ((int[])[1, 10, 15]).Select(h => coat.GetProperty("hours")[h].GetProperty("verdict").GetString()).Distinct());
        Assert.Equal(JsonValueKind.Null, coat.GetProperty("hours")[10].GetProperty("warmestC").ValueKind);
        Assert.Equal("2026-11-24T11:00", coat.GetProperty("best").GetProperty("from").GetString());
        Assert.Equal(1, coat.GetProperty("gaps").GetArrayLength());
        Assert.Equal("earliestRecoat", coat.GetProperty("waits")[0].GetProperty("for").GetString());
    }

    [Fact]
    public void A_day_without_a_good_hour_ends_with_one() =>
        Assert.Equal(Outcome.DoesNotWork, Shell.RunWith("08:00 41 °F 90 %\n09:00 41 °F 90 %\n", "hours", Job, "-").Outcome);

    [Fact]
    public void Readings_that_cannot_be_used_are_said()
    {
        var shell = Shell.RunWith("Time,Temp,RH\n2026-11-25 08:00,21,48\n", "hours", Job, "-", "--lang", "en");
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.StartsWith("temperature: The temperatures have no unit.", Assert.Single(shell.Faults));
    }
}
