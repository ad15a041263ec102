using System.Text.Json;
using System.Text.Json.Serialization;

namespace Lapwise.Core.Explain;

/// <summary>Writes an enum as its camelCase name and refuses bare numbers, so a file says what it means.</summary>
public sealed class CamelCaseEnumConverter<T>() : JsonStringEnumConverter<T>(JsonNamingPolicy.CamelCase, allowIntegerValues: false)
    where T : struct, Enum;
