using System.Text;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

public sealed class JobFileTests
{
    [Fact]
    public void A_job_written_reads_back_the_same()
    {
        var text = JobFile.Write(Written.Job);
        var read = JobFile.ReadJob(text);

        Assert.Empty(read.Faults);
        Assert.Equal(text, JobFile.Write(read.Document!));
        Assert.Empty(JobReading.Read(read.Document!, [Written.Clear]).Faults);
    }

    [Fact]
    public void A_product_written_reads_back_the_same()
    {
        var text = JobFile.Write(Written.Clear);
        Assert.Equal(text, JobFile.Write(JobFile.ReadProduct(Encoding.UTF8.GetBytes(text)).Document!));
    }

    [Fact]
    public void A_member_left_out_keeps_its_default()
    {
        var document = JobFile.ReadJob("{}").Document!;
        Assert.NotNull(document.Room);
        Assert.NotNull(document.Tops);
        Assert.Equal(JobDocument.CurrentVersion, document.Lapwise);
    }

    [Fact]
    public void A_quantity_may_be_a_bare_number_and_keeps_its_digits() =>
        Assert.Equal("96.50", JobFile.ReadJob("""{"tops":[{"name":"Top","outline":{"length":96.50}}]}""").Document!.Tops[0].Outline.Length!.Value.Text);

    [Theory]
    [InlineData("", "", "FileEmpty", 1)]
    [InlineData(" \n ", "", "FileEmpty", 1)]
    [InlineData("null", "", "ValueMissing", 1)]
    [InlineData("[]", "", "WrongKindOfValue", 1)]
    [InlineData("\"job\"", "", "WrongKindOfValue", 1)]
    [InlineData("{\n  \"name\": \"half", "", "JsonNotUnderstood", 2)]
    [InlineData("{\n  \"name\": \"x\",\n}", "", "JsonNotUnderstood", 3)]
    [InlineData("{} {}", "", "JsonNotUnderstood", 1)]
    [InlineData("# a kitchen\nlapwise: 1\nname: Kitchen\n", "", "FileNotJson", 1)]
    [InlineData("{\"name\":\"\\ud800\"}", "", "JsonNotUnderstood", 1)]
    [InlineData("{\n  \"nam\": \"x\"\n}", "nam", "MemberUnknown", 2)]
    [InlineData("{\n  \"room\": {\n    \"humidty\": \"48 %\"\n  }\n}", "room.humidty", "MemberUnknown", 3)]
    [InlineData("{\"name\":\"a\",\n\"name\":\"b\"}", "name", "MemberTwice", 2)]
    [InlineData("{\n\"tops\": [\n{ \"name\": 3 } ] }", "tops[0].name", "WrongKindOfValue", 3)]
    [InlineData("{\"tops\":{}}", "tops", "WrongKindOfValue", 1)]
    [InlineData("{\"tops\":[[]]}", "tops[0]", "WrongKindOfValue", 1)]
    [InlineData("{\"tops\":[null]}", "tops[0]", "ValueMissing", 1)]
    [InlineData("{\"room\":null}", "room", "ValueMissing", 1)]
    [InlineData("{\"room\":{\"air\":null}}", "room.air", "ValueMissing", 1)]
    [InlineData("{\"room\":{\"air\":true}}", "room.air", "WrongKindOfValue", 1)]
    [InlineData("{\"lapwise\":\"1\"}", "lapwise", "WrongKindOfValue", 1)]
    [InlineData("{\"lapwise\":1.5}", "lapwise", "WrongKindOfValue", 1)]
    [InlineData("{\"lapwise\":2,\"whatever\":[]}", "lapwise", "MadeByNewerVersion", 1)]
    [InlineData("{\"units\":\"imperial\"}", "units", "WordUnknown", 1)]
    [InlineData("{\"units\":7}", "units", "WordUnknown", 1)]
    [InlineData("{\"tops\":[{\"edges\":{\"A\":{\"kind\":\"opne\"}}}]}", "tops[0].edges.A.kind", "WordUnknown", 1)]
    [InlineData("{\"tops\":[{\"edges\":{\"A\":{\"joint\":\"yes\"}}}]}", "tops[0].edges.A.joint", "WrongKindOfValue", 1)]
    [InlineData("{\"products\":[{\"mix\":{\"a\":\"two\"}}]}", "products[0].mix.a", "WrongKindOfValue", 1)]
    [InlineData("{\"products\":[{\"hazards\":[\"isocianate\"]}]}", "products[0].hazards[0]", "WordUnknown", 1)]
    [InlineData("{\"products\":[{\"kits\":[{\"price\":1e400}]}]}", "products[0].kits[0].price", "WrongKindOfValue", 1)]
    public void A_file_that_is_no_job_is_refused_at_its_path_and_line(string json, string path, string code, int line)
    {
        var read = JobFile.ReadJob(json);

        Assert.Null(read.Document);
        var fault = Assert.Single(read.Faults);
        Assert.Equal((path, code, line), (fault.Path, fault.Code, fault.Line));
        Said.InEveryVoice([fault.Text, fault.Cure]);
    }

    [Fact]
    public void A_mistyped_name_or_word_is_met_with_the_one_that_was_probably_meant()
    {
        var read = JobFile.ReadJob("""{"room":{"humidty":"48 %"},"tops":[{"edges":{"A":{"kind":"waterfal"}}}]}""");
        Assert.Equal(2, read.Faults.Count);
        Assert.Contains("Did you mean humidity?", read.Faults[0].Text(Voice.Default), StringComparison.Ordinal);
        Assert.Contains("¿Quería decir waterfall?", read.Faults[1].Text(Spanish), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_nested_a_thousand_deep_is_refused_with_a_clear_fault()
    {
        string[] nested =
        [
            new string('[', 1000) + new string(']', 1000),
            string.Concat(Enumerable.Repeat("{\"tops\":", 1000)) + "1" + new string('}', 1000),
            "{\"name\":" + new string('[', 1000) + new string(']', 1000) + "}",
        ];
        Assert.All(nested, json => Assert.Contains(JobFile.ReadJob(json).Faults, f => f.Code == "NestedTooDeep"));
        Assert.All(nested, json => Assert.Null(JobFile.ReadJob(json).Document));
    }

    [Fact]
    public void A_file_of_50_MB_is_refused_before_it_is_read()
    {
        var fault = Assert.Single(JobFile.ReadJob(new byte[50_000_000]).Faults);
        Assert.Equal("FileTooLarge", fault.Code);
        Assert.Equal("The file has 50 MB; at most 5 MB are read.", fault.Text(Voice.Default));
        Assert.Equal("FileTooLarge", Assert.Single(JobFile.ReadJob(new string(' ', 50_000_000)).Faults).Code);
        Assert.Equal("FileTooLarge", JobFile.TooLarge(50_000_000)?.Code);
        Assert.Null(JobFile.TooLarge(JobFile.MostBytes));
    }

    [Fact]
    public void A_byte_order_mark_is_no_fault() => Assert.Empty(JobFile.ReadJob([0xEF, 0xBB, 0xBF, .. "{}"u8]).Faults);

    [Fact]
    public void Faults_found_later_are_said_with_their_line()
    {
        var read = JobFile.ReadJob("""
            {
              "name": "Kitchen",
              "tops": [
                {
                  "name": "Top",
                  "outline": { "length": "no", "depth": "25 in" }
                }
              ]
            }
            """);
        var faults = read.WithLines(JobReading.Read(read.Document!, []).Faults);

        Assert.Equal(6, Assert.Single(faults, f => f.Path == "tops[0].outline.length").Line);
        Assert.Equal(4, Assert.Single(faults, f => f.Path == "tops[0].edges.C").Line); // left out: the line of its top
        Assert.Null(Assert.Single(faults, f => f.Path == "crew").Line);
    }

    private static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Metric);
}
