using Lapwise.Core.OnSite;

namespace Lapwise.Cli.Tests.Commands;

public sealed class RecordCommandTests
{
    private const long Minute = 60_000;
    private const long Nine = 1_790_000_000_000;

    private static readonly IssuedPlan Plan = new()
    {
        Job = "Tidemill house", Product = "Invented clear", Fingerprint = "00c0ffee", Core = "0.1.0", OpenTimeMs = 8 * Minute, PotLifeMs = 45 * Minute, Crew = ["Alba"],
        Sections =
        [
            new() { Id = "1", Top = "Island", TakesMs = [3 * Minute], EndMs = 3 * Minute, Batch = "A" },
            new() { Id = "2", Top = "Island", TakesMs = [3 * Minute], StartMs = 3 * Minute, EndMs = 6 * Minute, Batch = "A" },
            new() { Id = "3", Top = "Island", TakesMs = [3 * Minute], StartMs = 6 * Minute, EndMs = 9 * Minute, Batch = "A" },
        ],
        Laps = [new() { A = "1", B = "2", LengthM = 0.6 }, new() { A = "2", B = "3", LengthM = 0.6 }],
        Batches = [new() { Id = "A", VolumeMl = 300, GivesMl = 280 }],
    };

    private static string File(bool late)
    {
        var number = 0;
        MarkDocument Mark(double minute, What what, bool assumed = false, long backMs = 0) => MarkReading.Write(new Mark(
            new Stamp($"m{++number}", new DeviceMoment("phone1", "s1", Nine + (long)(minute * Minute), (long)(minute * Minute)), number, assumed, backMs), what));
        var third = late ? 14 : 10;
        MarkDocument[] marks =
        [
            Mark(0, new What.Issued(Plan)), Mark(0.5, new What.Checked("sanded")), Mark(1, new What.BatchMixed("A", 0)), Mark(3, new What.SectionWet("1", 0)),
            Mark(6, new What.SectionDry("1", 0), assumed: true), Mark(6.5, new What.SectionWet("2", 0), backMs: Minute / 2), Mark(9, new What.SectionDry("2", 0)),
            Mark(9.5, new What.SectionWet("3", 0)), Mark(9.6, new What.Undone("m8")), Mark(third, new What.SectionWet("3", 0)), Mark(third + 3, new What.SectionDry("3", 0)),
            new() { Id = "x", Device = "phone2", Number = 1, Kind = "filmWeighed", ClockMs = Nine, Session = "s" },
        ];
        return RunFile.Write(new RunDocument { Marks = [.. marks, .. marks.Reverse()] });
    }

    [Fact]
    public void A_run_is_told_as_it_was_done()
    {
        var shell = Shell.RunWith(File(late: false), "record", "-", "--lang", "en");
        Assert.Equal(Outcome.Done, shell.Outcome);
        shell.Matches("record.en");
        Shell.RunWith(File(late: false), "record", "-", "--lang", "es").Matches("record.es");
    }

    [Fact]
    public void A_lap_joined_too_late_ends_with_one()
    {
        var shell = Shell.RunWith(File(late: true), "record", "-", "--json");
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Equal(12, shell.Json["marks"]!.AsArray().Count);
        Assert.True(shell.Json["laps"]![1]!["marginMs"]!.GetValue<long>() < 0);
    }

    [Theory]
    [InlineData("record.pdf", "%PDF")]
    [InlineData("record.html", "<!doctype html>")]
    public void It_is_written_on_paper_where_asked(string name, string start)
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("lapwise").FullName, name);
        Assert.Equal(Outcome.Done, Shell.RunWith(File(late: false), "record", "-", "--out", path).Outcome);
        Assert.StartsWith(start, System.IO.File.ReadAllText(path), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[]", "This is not the record of a run.")]
    [InlineData("{\"lapwise\":2,\"marks\":[]}", "lapwise: This document is version 2")]
    [InlineData("{\"lapwise\":1,\"marks\":[{\"kind\":\"note\"}]}", "marks[0].id: A mark has no id")]
    [InlineData("{\"lapwise\":1,\"marks\":[{\"id\":\"a\",\"kind\":\"note\"}]}", "marks: The mark that issued the plan is missing.")]
    [InlineData("{\"lapwise\":1,\"marks\":[{\"id\":\"a\",\"kind\":\"issued\",\"plan\":{\"sections\":[null]}}]}", "marks: The mark that issued the plan is missing.")]
    [InlineData("{\"lapwise\":1,\"marks\":\"none\"}", "marks")]
    public void A_file_that_cannot_be_used_is_said(string json, string start)
    {
        var shell = Shell.RunWith(json, "record", "-", "--lang", "en");
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.StartsWith(start, Assert.Single(shell.Faults).Replace("line 1: ", "", StringComparison.Ordinal).Replace(", line 1", "", StringComparison.Ordinal));
    }
}
