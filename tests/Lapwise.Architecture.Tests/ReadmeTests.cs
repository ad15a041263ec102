using System.Text.Json;
using System.Text.RegularExpressions;

namespace Lapwise.Architecture.Tests;

/// <summary>What the README says can be done.</summary>
public sealed class ReadmeTests
{
    private static readonly string Readme = Repository.Read("README.md");

    [Theory]
    [InlineData("eng/start")]
    [InlineData("eng/test")]
    [InlineData("eng/lapwise")]
    public void The_commands_it_names_are_there_and_can_be_run(string command)
    {
        Assert.Contains("./" + command, Readme, StringComparison.Ordinal);
        Assert.True(OperatingSystem.IsWindows() || File.GetUnixFileMode(Path.Combine(Repository.Root, command)).HasFlag(UnixFileMode.UserExecute));
    }

    [Fact]
    public void Continuous_integration_runs_the_same_test_command_and_nothing_else() =>
        Assert.Equal(["#!/usr/bin/env bash", "exec \"$(dirname \"${BASH_SOURCE[0]}\")/../eng/test\""], Repository.Read(".ci/run").TrimEnd().Split('\n'));

    [Fact]
    public void It_names_the_same_SDK_as_the_build()
    {
        var sdk = JsonDocument.Parse(Repository.Read("global.json")).RootElement.GetProperty("sdk").GetProperty("version").GetString()!;
        var major = sdk.Split('.')[0];

        Assert.Contains($".NET {major} SDK", Readme, StringComparison.Ordinal);
        Assert.Contains($"<TargetFramework>net{major}.0</TargetFramework>", Repository.Read("Directory.Build.props"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("README.md")]
    [InlineData("docs/architecture.md")]
    [InlineData("CONTRIBUTING.md")]
    public void Every_file_it_points_to_is_there(string page)
    {
        var folder = Path.GetDirectoryName(page)!;
        var targets = Regex.Matches(Repository.Read(page), @"\]\((?<to>[^)#:]+)\)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(30)).Select(m => m.Groups["to"].Value).ToList();

        Assert.NotEmpty(targets);
        Assert.All(targets, t => Assert.True(Path.Exists(Path.Combine(Repository.Root, folder, t)), t));
    }

    [Fact]
    public void Every_sample_it_runs_is_there() =>
        Assert.All(
            Regex.Matches(Readme, @"samples/[\w./-]+\w", RegexOptions.None, TimeSpan.FromSeconds(30)).Select(m => m.Value),
            sample => Assert.True(Path.Exists(Path.Combine(Repository.Root, sample)), sample));
}
