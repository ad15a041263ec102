using System.Text.Json.Serialization.Metadata;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

/// <summary>Whoever chooses between two edits reads words, not members of a document.</summary>
public sealed class FieldWordsTests
{
    private static readonly Voice English = new(Language.English, UnitSystem.Us);
    private static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Us);

    /// <summary>What is written and said alike.</summary>
    private static readonly HashSet<string> SameInSpanish = ["l", "u", "color"];

    [Fact]
    public void Every_member_of_a_job_has_words_in_both_languages()
    {
        var members = Members(JobJson.Default.JobDocument, []).ToList();
        Assert.True(members.Count > 100, $"{members.Count} members");
        Assert.All(members.Select(m => m.Name).Distinct(), name =>
        {
            Assert.False(FieldWords.Of(name, English).Any(char.IsUpper) && !FieldWords.Of(name, English).Contains(' ', StringComparison.Ordinal), name);
            if (!SameInSpanish.Contains(name)) Assert.NotEqual(name, FieldWords.Of(name, Spanish));
        });
    }

    [Fact]
    public void Every_choice_has_words_in_both_languages()
    {
        var choices = Members(JobJson.Default.JobDocument, []).SelectMany(m => Choices(m).Select(c => (m.Name, Written: c))).ToList();
        Assert.True(choices.Count > 50, $"{choices.Count} choices");
        Assert.All(choices.Where(c => !SameInSpanish.Contains(c.Written)), c => Assert.NotEqual(FieldWords.Value(c.Name, c.Written, English), FieldWords.Value(c.Name, c.Written, Spanish)));
    }

    [Theory]
    [InlineData("outline.rightLegLength", "contorno, largo del brazo derecho")]
    [InlineData("edges.F.kind", "lados, lado F, tipo")]
    [InlineData("cutouts[1].radius", "huecos, n.º 2, radio")]
    public void A_place_is_said_from_the_outside_in(string path, string said) => Assert.Equal(said, FieldWords.Of(path, Spanish));

    [Theory]
    [InlineData("edges.F.kind", "wall", "pared")]
    [InlineData("timeline.workDays", "monday, friday", "lunes, viernes")]
    // What somebody wrote stays as it is, though it reads like a choice.
    [InlineData("name", "wall", "wall")]
    [InlineData("outline.length", "11' 0\"", "11' 0\"")]
    public void A_choice_is_said_and_what_was_written_stays(string path, string written, string said) => Assert.Equal(said, FieldWords.Value(path, written, Spanish));

    private static IEnumerable<JsonPropertyInfo> Members(JsonTypeInfo type, HashSet<Type> seen)
    {
        var item = type.ElementType is { } of ? JobJson.Default.GetTypeInfo(of)! : type;
        if (item.Type == typeof(ProductDocument) || item.Kind != JsonTypeInfoKind.Object || !seen.Add(item.Type)) yield break;
        foreach (var member in item.Properties.Where(p => p.Name != "lapwise"))
        {
            yield return member;
            if (JobJson.Default.GetTypeInfo(member.PropertyType) is { } below)
                foreach (var deeper in Members(below, seen)) yield return deeper;
        }
    }

    private static IEnumerable<string> Choices(JsonPropertyInfo member)
    {
        var type = member.PropertyType.IsGenericType ? member.PropertyType.GenericTypeArguments[^1] : member.PropertyType;
        return type.IsEnum ? Enum.GetValuesAsUnderlyingType(type).Cast<object>().Select(v => System.Text.Json.JsonSerializer.Serialize(Enum.ToObject(type, v), JobJson.Default.GetTypeInfo(type)!).Trim('"'))
            : type == typeof(bool) ? ["true"] : [];
    }
}
