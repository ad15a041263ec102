using Lapwise.Core;
using Lapwise.Core.Explain;

namespace Lapwise.Cli.Tests;

public sealed class CommandLineTests
{
    [Fact]
    public void Help_names_every_phase_with_its_question_in_both_languages()
    {
        foreach (var (language, voice) in new[] { ("en", new Voice(Language.English, UnitSystem.Us)), ("es", new Voice(Language.Spanish, UnitSystem.Us)) })
        {
            var help = Shell.Run("help", "--lang", language);
            Assert.Equal(Outcome.Done, help.Outcome);
            var flowed = string.Join(' ', help.Out.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
            Assert.All(Phases.All, phase => Assert.Contains($"{phase.Name(voice)} {phase.Question(voice)}", flowed));
        }
    }

    [Fact]
    public void Help_fits_and_is_kept()
    {
        Shell.Run("help").Matches("help.en");
        Shell.Run("--help", "--lang=es").Matches("help.es");
    }

    [Fact]
    public void Every_command_has_its_own_help()
    {
        Assert.All(Cli.Commands.Command.All, command =>
        {
            var help = Shell.Run("help", command.Name);
            Assert.StartsWith("lapwise " + command.Name, help.Out);
            Assert.Equal(help.Out, Shell.Run(command.Name, "--help").Out);
            Assert.NotEqual(help.Out, Shell.Run("help", command.Name, "--lang", "es").Out);
            Assert.All(help.Out.Split('\n'), line => Assert.True(line.Length <= Terminal.Columns, line));
        });
    }

    [Theory]
    [InlineData("--colour: There is no such option.", "order", "x", "--colour")]
    [InlineData("--lang: \"fr\" is not a choice here.", "order", "x", "--lang", "fr")]
    [InlineData("--units: \"\" is not a choice here.", "order", "x", "--units")]
    [InlineData("--products: A value must follow.", "order", "x", "--products")]
    [InlineData("ordr: There is no such command.", "ordr", "x")]
    [InlineData("order: It takes GRAPH.", "order")]
    [InlineData("order: It takes GRAPH.", "order", "x", "y")]
    [InlineData("The file no-such-file.json cannot be opened.", "order", "no-such-file.json")]
    public void A_slip_on_the_command_line_is_said_in_one_line(string start, params string[] words)
    {
        var shell = Shell.Run(words);
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.StartsWith(start, Assert.Single(shell.Faults));
    }

    [Fact]
    public void A_file_of_50_MB_is_refused_without_reading_it()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            using (var file = File.Create(path)) file.SetLength(50 * 1024 * 1024);
            var before = GC.GetTotalAllocatedBytes(precise: true);
            var shell = Shell.Run("order", path);
            Assert.True(GC.GetTotalAllocatedBytes(precise: true) - before < 5_000_000);
            Assert.Equal(Outcome.BadInput, shell.Outcome);
            Assert.StartsWith("The file has 5", Assert.Single(shell.Faults));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_stream_that_does_not_end_is_cut_off()
    {
        var shell = Shell.RunWith(new string(' ', 6 * 1024 * 1024), "order", "-");
        Assert.StartsWith("The file has 5", Assert.Single(shell.Faults));
    }

    [Fact]
    public void A_file_that_is_not_text_is_said_so()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            File.WriteAllBytes(path, [0xff, 0xfe, 0x00, 0xd8, 0xc3, 0x28]);
            Assert.Equal(Outcome.BadInput, Shell.Run("order", path).Outcome);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
