using System.Text.Json.Serialization;

namespace Lapwise.Core.Explain;

/// <summary>What a data sheet warns of; each has its caution in <see cref="Cautions"/>, shown in this order.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<Hazard>))]
public enum Hazard { Isocyanate, EpoxyAmine, FlammableVapour, SolventVapour, HotMix, SandingDust, SkinSensitiser }
