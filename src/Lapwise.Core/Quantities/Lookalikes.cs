using System.Text.Json.Serialization;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Quantities;

// Quantities that look alike and must not be mixed up each have a type of their own; there is no arithmetic
// between them, so adding wet to dry film, or comparing pot life with open time, does not compile.
// Everything else in the core is a double in SI (or mL and g, which cups and scales read) with the unit in its name.

/// <summary>Thickness as applied, in micrometres. Not <see cref="DryFilm"/>.</summary>
public readonly record struct WetFilm(double Micrometres) { public double Metres => Micrometres * 1e-6; }

/// <summary>Thickness after cure, in micrometres. Not <see cref="WetFilm"/>.</summary>
public readonly record struct DryFilm(double Micrometres) { public double Metres => Micrometres * 1e-6; }

/// <summary>Temperature of the room's air, °C: drying follows it. Not the surface, not the material.</summary>
public readonly record struct AirTemperature(double Celsius);

/// <summary>Temperature of the top itself, °C: the film's open time and the dew margin follow it.</summary>
public readonly record struct SurfaceTemperature(double Celsius);

/// <summary>Temperature of the material in its container, °C: pot life follows it.</summary>
public readonly record struct MaterialTemperature(double Celsius);

/// <summary>How long a film on the top still takes a lap without a line. Not <see cref="PotLife"/>.</summary>
public readonly record struct OpenTime(double Seconds, Origin Origin);

/// <summary>How long a mixed batch can be used, from the first contact of A and B. Not <see cref="OpenTime"/>.</summary>
public readonly record struct PotLife(double Seconds, Origin Origin);

/// <summary>What a time rests on. It is shown beside every margin.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<Origin>))]
public enum Origin { DataSheet, TestBoard, Guess }

/// <summary>A point in plan, metres.</summary>
public readonly record struct PointM(double X, double Y)
{
    public double DistanceTo(PointM other) => Math.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y)));
}
