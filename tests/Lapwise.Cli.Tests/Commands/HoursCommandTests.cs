using System.Globalization;
using System.Text;

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
