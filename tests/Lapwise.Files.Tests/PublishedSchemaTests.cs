using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Lapwise.Core.Jobs;
using Lapwise.Core.OnSite;

namespace Lapwise.Files.Tests;

/// <summary>The published schemas against the types, and against a validator that knows nothing of them (JsonSchema.Net).</summary>
public sealed class PublishedSchemaTests
{
    private static readonly string JobPath = Repository.Path("schema", "job.v1.schema.json");
    private static readonly string ProductPath = Repository.Path("schema", "product.v1.schema.json");
    private static readonly string RunPath = Repository.Path("schema", "run.v1.schema.json");
    private static readonly Lazy<JsonSchema> Job = new(() => JsonSchema.FromText(File.ReadAllText(JobPath)));
    private static readonly Lazy<JsonSchema> Product = new(() => JsonSchema.FromText(File.ReadAllText(ProductPath)));

    // After a deliberate change of the types: LAPWISE_ACCEPT=1 rewrites the published file, and the change is seen in review.
    [Fact]
    public void Job_schema_says_what_the_types_say() =>
        Holds(JobPath, SchemaFromTypes.Write(JobJson.Default.JobDocument, "urn:lapwise:schema:job:v1", "Lapwise job, version 1"));

    [Fact]
    public void Product_schema_says_what_the_types_say() =>
        Holds(ProductPath, SchemaFromTypes.Write(JobJson.Default.ProductDocument, "urn:lapwise:schema:product:v1", "Lapwise product, version 1"));

    [Fact]
    public void Run_schema_says_what_the_types_say() =>
        Holds(RunPath, SchemaFromTypes.Write(RunJson.Default.RunDocument, "urn:lapwise:schema:run:v1", "Lapwise run, version 1"));

    [Fact]
    public void Every_sample_satisfies_its_schema()
    {
        var jobs = Repository.Samples("*.job.yaml").ToList();
        var products = Repository.Samples("*.product.yaml").ToList();
        Assert.True(jobs.Count >= 4 && products.Count >= 2);
        Assert.All(jobs, path => Assert.True(Satisfies(Job.Value, File.ReadAllText(path)), path));
        Assert.All(products, path => Assert.True(Satisfies(Product.Value, File.ReadAllText(path)), path));
    }

    [Theory]
    [InlineData("lapwise: 1", "lapwise: 2")]
    [InlineData("lapwise: 1", "lapwise: one")]
    [InlineData("name: Great island, the Tidemill house, Wrenlow", "nickname: Great island")]
    [InlineData("air: 73 °F", "air: [73]")]
    [InlineData("humidity: 45 %", "")]
    [InlineData("airMovement: still", "airMovement: gale")]
    [InlineData("shape: rectangle", "shape: star")]
    [InlineData("shape: rectangle", "shape: 0")]
    [InlineData("    thickness: 1 1/2 in", "    thicknes: 1 1/2 in")]
    [InlineData("      A: { kind: open, profile: { shape: eased, radius: 1/8 in } }", "      A: { kind: open, coatedEnds: two }")]
    public void Job_schema_refuses_an_offender(string good, string bad)
    {
        var sample = File.ReadAllText(Repository.Path("samples", "jumbo-island.job.yaml"));
        Assert.Contains(good, sample);
        Assert.False(Satisfies(Job.Value, sample.Replace(good, bad)));
    }

    [Theory]
    [InlineData("mix: { by: volume, a: 2, b: 1 }", "mix: { by: volume, a: 2 }")]
    [InlineData("mix: { by: volume, a: 2, b: 1 }", "mix: { by: weight, a: 2, b: 1 }")]
    [InlineData("endsBy: hidden", "endsBy: suddenly")]
    [InlineData("hazards: [isocyanate,", "hazards: [smell,")]
    [InlineData("volumeSolids: 62 %", "")]
    [InlineData("price: 84.00", "price: eighty-four")]
    public void Product_schema_refuses_an_offender(string good, string bad)
    {
        var sample = File.ReadAllText(Repository.Path("samples", "products", "clear-fast-two-part.product.yaml"));
        Assert.Contains(good, sample);
        Assert.False(Satisfies(Product.Value, sample.Replace(good, bad)));
    }

    [Fact]
    public void Every_property_is_described()
    {
        foreach (var path in new[] { JobPath, ProductPath, RunPath })
        {
            var properties = Descendants(JsonNode.Parse(File.ReadAllText(path))!)
                .OfType<JsonObject>().Select(o => o["properties"]).OfType<JsonObject>().SelectMany(p => p).ToList();
            Assert.True(properties.Count > 20);
            Assert.All(properties, p => Assert.False(string.IsNullOrWhiteSpace((string?)p.Value!["description"]), p.Key));
        }
    }

    private static void Holds(string path, string fromTypes)
    {
        if (Environment.GetEnvironmentVariable("LAPWISE_ACCEPT") == "1") File.WriteAllText(path, fromTypes);
        Assert.Equal(File.ReadAllText(path), fromTypes);
    }

    private static bool Satisfies(JsonSchema schema, string yaml)
    {
        var read = YamlText.ToJson(yaml);
        Assert.Null(read.Fault);
        using var json = JsonDocument.Parse(read.Json!);
        return schema.Evaluate(json.RootElement).IsValid;
    }

    private static IEnumerable<JsonNode?> Descendants(JsonNode? node) => node switch
    {
        JsonObject o => o.SelectMany(p => Descendants(p.Value)).Prepend(o),
        JsonArray a => a.SelectMany(Descendants).Prepend(a),
        _ => [node],
    };
}
