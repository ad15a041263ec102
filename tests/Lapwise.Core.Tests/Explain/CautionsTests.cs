using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Explain;

public sealed class CautionsTests
{
    [Fact]
    public void Every_hazard_has_its_caution_in_both_languages() =>
        Said.InEveryVoice([Cautions.Deferral, .. Enum.GetValues<Hazard>().Select(Cautions.For)]);

    [Fact]
    public void The_deferral_names_the_data_sheet_codes_and_licence()
    {
        Assert.All(["safety data sheet", "local codes", "licensed"], t => Assert.Contains(t, Cautions.Deferral(new Voice(Language.English, UnitSystem.Us)), StringComparison.Ordinal));
        Assert.All(["datos de seguridad", "normas locales", "licencia"], t => Assert.Contains(t, Cautions.Deferral(new Voice(Language.Spanish, UnitSystem.Us)), StringComparison.Ordinal));
    }

    /// <summary>29 CFR 1910.134 is the respirator rule (from memory).</summary>
    [Theory]
    [InlineData(Hazard.Isocyanate, "without a smell")]
    [InlineData(Hazard.Isocyanate, "29 CFR 1910.134")]
    [InlineData(Hazard.HotMix, "pour it out thin")]
    [InlineData(Hazard.FlammableVapour, "Pilot lights")]
    [InlineData(Hazard.FlammableVapour, "rags")]
    [InlineData(Hazard.SandingDust, "silica")]
    [InlineData(Hazard.SandingDust, "29 CFR 1910.134")]
    public void The_usual_caution_is_there(Hazard hazard, string words) =>
        Assert.Contains(words, Cautions.For(hazard)(Voice.Default), StringComparison.Ordinal);

    [Fact]
    public void Two_products_with_one_hazard_say_it_once() =>
        Assert.Equal(2, Cautions.For([Hazard.SandingDust, Hazard.Isocyanate, Hazard.SandingDust]).Count);
}
