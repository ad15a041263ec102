using System.Text.Json.Serialization;

namespace Lapwise.Core.Jobs;

/// <summary>Source-generated JSON of the documents; trimmed pages need no reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    WriteIndented = true,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    MaxDepth = 32)]
[JsonSerializable(typeof(JobDocument))]
[JsonSerializable(typeof(ProductDocument))]
[JsonSerializable(typeof(IReadOnlyList<ProductDocument>))]
[JsonSerializable(typeof(ShelfDocument))]
[JsonSerializable(typeof(ShelfEntryDocument))]
[JsonSerializable(typeof(IReadOnlyList<ShelfEntryDocument>))]
[JsonSerializable(typeof(RatesDocument))]
[JsonSerializable(typeof(DaysDocument))]
[JsonSerializable(typeof(SettledDaysDocument))]
[JsonSerializable(typeof(KeepDocument))]
public sealed partial class JobJson : JsonSerializerContext;
