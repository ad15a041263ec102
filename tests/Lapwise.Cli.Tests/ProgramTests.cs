using System.Diagnostics;
using Lapwise.Core.Explain;

namespace Lapwise.Cli.Tests;

/// <summary>The program as a process, and what it says while it works.</summary>
public sealed class ProgramTests
{
    [Theory]
    [InlineData(0, "takeoff", "vanity.job.yaml")]
    [InlineData(2, "takeoff", "no-such.job.yaml")]
    public async Task The_process_ends_with_the_code_of_its_outcome(int code, string command, string sample)
    {
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var word in new[] { typeof(CommandLine).Assembly.Location, command, Shell.Sample(sample) }) start.ArgumentList.Add(word);
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal(code, process.ExitCode);
        // Neither stream is a terminal here: plain text, no escapes, and letters beyond ASCII come through.
        Assert.DoesNotContain('\u001b', await output + await error);
        if (code == 0) Assert.Contains("Cubierta", await output);
    }

    [Fact]
    public void Work_that_takes_over_a_second_is_told_on_the_error_stream_once()
    {
        using var error = new StringWriter();
        var terminal = new Terminal(TextReader.Null, TextWriter.Null, error);
        Assert.Equal(7, terminal.Show(v => v.Say("Waiting…", "Esperando…"), Voice.Default, () => { Thread.Sleep(2300); return 7; }));
        Assert.Equal(error.ToString().IndexOf("Waiting… ", StringComparison.Ordinal), error.ToString().LastIndexOf("Waiting… ", StringComparison.Ordinal));
        Assert.StartsWith("Waiting… ", error.ToString());
    }

    [Fact]
    public void Quick_work_is_not_told()
    {
        using var error = new StringWriter();
        new Terminal(TextReader.Null, TextWriter.Null, error).Show(v => v.Say("Waiting…", "Esperando…"), Voice.Default, () => 7);
        Assert.Equal("", error.ToString());
    }
}
