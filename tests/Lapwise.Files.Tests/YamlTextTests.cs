using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;

namespace Lapwise.Files.Tests;

public sealed class YamlTextTests
{
    [Theory]
    [InlineData("96 1/2 in", "\"96 1/2 in\"")]
    [InlineData("8' 4-1/4\"", "\"8' 4-1/4\\\"\"")]
    [InlineData("2.45 m", "\"2.45 m\"")]
    [InlineData("96", "96")]
    [InlineData("1.50", "1.50")]
    [InlineData("-3", "-3")]
    [InlineData("\"96\"", "\"96\"")]
    [InlineData("'true'", "\"true\"")]
    [InlineData("true", "true")]
    [InlineData("~", "null")]
    [InlineData("007", "\"007\"")]
    [InlineData(".5", "\".5\"")]
    [InlineData("1_000", "\"1_000\"")]
    [InlineData(".inf", "\".inf\"")]
    [InlineData("no", "\"no\"")]
    [InlineData("78 °F", "\"78 °F\"")]
    public void A_plain_scalar_stays_as_written(string scalar, string json) =>
        Assert.Equal($"{{\"x\": {json}}}", YamlText.ToJson($"x: {scalar}").Json);

    [Fact]
    public void Each_value_keeps_its_line()
    {
        const string yaml = "# a note\nname: x\n\ntops:\n  - name: one\n\n  - name: two\n";
        var lines = YamlText.ToJson(yaml).Json!.Split('\n');
        Assert.Contains("\"name\"", lines[1]);
        Assert.Contains("\"tops\"", lines[3]);
        Assert.Contains("\"one\"", lines[4]);
        Assert.Contains("\"two\"", lines[6]);
    }

    [Fact]
    public void An_alias_is_written_out() =>
        Assert.Equal("""{"a":{"k":1},"b":{"k":1}}""", Compact(YamlText.ToJson("a: &x { k: 1 }\nb: *x").Json!));

    [Fact]
    public void An_alias_bomb_is_refused()
    {
        var bomb = "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n" + string.Concat(Enumerable.Range(1, 9).Select(i =>
            $"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 10))}]\n"));
        Refused("TooManyValues", bomb);
    }

    [Fact]
    public void An_alias_inside_itself_is_refused() => Refused("NestedTooDeep", "a: &a [*a]");

    [Theory]
    [InlineData('[', ']')]
    [InlineData('{', '}')]
    public void A_thousand_deep_is_refused(char open, char close)
    {
        var inner = open == '{' ? "x: " : "";
        Refused("NestedTooDeep", string.Concat(Enumerable.Repeat(open + inner, 1000)) + "1" + new string(close, 1000));
        Refused("NestedTooDeep", string.Concat(Enumerable.Repeat(open + inner, 1000)));
    }

    [Theory]
    [InlineData("YamlNotUnderstood", "a: [1, 2\nb: 3\n", null)]
    [InlineData("YamlNotUnderstood", "a: 1\n\tb: 2\n", 1)]
    [InlineData("AliasUnknown", "a: 1\nb: *nobody\n", 2)]
    [InlineData("MoreThanOneDocument", "a: 1\n---\nb: 2\n", 2)]
    [InlineData("TagNotUsed", "a: 1\nb: !!binary aGVsbG8=\n", 2)]
    [InlineData("KeyNotText", "a: 1\n? [b, c]\n: 2\n", 2)]
    public void What_is_not_used_here_is_refused_at_its_line(string code, string yaml, int? line) =>
        Assert.Equal(line, Refused(code, yaml));

    [Theory]
    [InlineData("")]
    [InlineData("# only a note\n")]
    public void An_empty_file_is_empty_json(string yaml) => Assert.Equal("", YamlText.ToJson(yaml).Json);

    [Fact]
    public void Any_text_gives_json_or_a_fault() =>
        Gen.String[Gen.Char["a1 :-\n\t[]{},&*!|>'\"#?%@`~.\\x<="], 0, 40].Sample(text =>
        {
            var read = YamlText.ToJson(text);
            if (read.Json is not null and not "") JsonNode.Parse(read.Json);
            return (read.Json is null) != (read.Fault is null);
        }, iter: 20_000);

    /// <summary>The parser takes such a key, written plain, for an alias.</summary>
    [Fact]
    public void A_key_with_a_star_comes_back()
    {
        const string json = """{"a *E{":[],"b *":"c *"}""";
        using var parsed = JsonDocument.Parse(json);
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(json), JsonNode.Parse(YamlText.ToJson(YamlText.FromJson(parsed.RootElement)).Json!)));
    }

    [Fact]
    public void Json_survives_the_way_to_yaml_and_back()
    {
        var text = Gen.OneOf(
            Gen.String[Gen.Char[" -:#'\"\\[]{}&*!|>%@`,~.0123456789eE+truefalsn\n\té°ñ/"], 0, 12],
            Gen.OneOf<string>("", "null", "~", "true", "96", "1.50", "-0", "1e3", "- a", "a: b", "---", "...", "=", "<<", " x ", "?", "96 1/2 in"));
        Gen.Dictionary(text, text.Array[0, 3])[0, 4].Sample(map =>
        {
            var json = JsonSerializer.Serialize(map);
            using var parsed = JsonDocument.Parse(json);
            var yaml = YamlText.FromJson(parsed.RootElement);
            var back = YamlText.ToJson(yaml);
            return back.Json is not null && JsonNode.DeepEquals(JsonNode.Parse(json), JsonNode.Parse(back.Json));
        }, print: map => JsonSerializer.Serialize(map));
    }

    private static int? Refused(string code, string yaml)
    {
        var read = YamlText.ToJson(yaml);
        Assert.Null(read.Json);
        Assert.Equal(code, read.Fault?.Code);
        return read.Fault!.Line;
    }

    private static string Compact(string json) => JsonNode.Parse(json)!.ToJsonString();
}
