using System.Text.Json.Serialization.Metadata;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Jobs;

/// <summary>The page that edits products asks for all that a product document holds, and for nothing it does not.</summary>
public sealed class ProductFieldsTests
{
    [Fact]
    public void Every_value_of_the_document_is_asked_for_once()
    {
        var asked = ProductFields.All.SelectMany(g => g.Fields.Select(f => g.Repeats is { } list ? $"{list}[].{f.Path}" : f.Path)).ToList();
        Assert.Equal(asked.Distinct(), asked);
        Assert.Equal(Members(typeof(ProductDocument), "").Where(m => m != "lapwise").Order(StringComparer.Ordinal), asked.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_field_and_group_says_its_name_and_why_in_both_languages()
    {
        foreach (var say in ProductFields.All.SelectMany(g => g.Fields.SelectMany(f => new[] { f.Name, f.Why }).Concat([g.Name, g.Why])))
        {
            Assert.NotEmpty(say(new Voice(Language.English, UnitSystem.Us)));
            Assert.NotEmpty(say(new Voice(Language.Spanish, UnitSystem.Metric)));
        }
    }

    private static IEnumerable<string> Members(Type type, string at) => JobJson.Default.GetTypeInfo(type)!.Properties.SelectMany(p =>
    {
        var path = at + p.Name;
        var inner = Nullable.GetUnderlyingType(p.PropertyType) ?? p.PropertyType;
        if (inner.IsGenericType && inner.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
        {
            var item = inner.GetGenericArguments()[0];
            return JobJson.Default.GetTypeInfo(item)?.Kind == JsonTypeInfoKind.Object ? Members(item, path + "[].") : [path];
        }

        return inner != typeof(Entry) && JobJson.Default.GetTypeInfo(inner)?.Kind == JsonTypeInfoKind.Object ? Members(inner, path + ".") : [path];
    });
}
