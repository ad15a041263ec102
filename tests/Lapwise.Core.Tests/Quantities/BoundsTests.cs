using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Quantities;

public sealed class BoundsTests
{
    private static readonly Bounds Side = new(0.001, 30, (v, x) => v.Length(x)) { AboveZero = true };

    [Theory]
    [InlineData(0, "NotPositive")]
    [InlineData(-1, "NotPositive")]
    [InlineData(0.0001, "TooSmall")]
    [InlineData(31, "TooLarge")]
    [InlineData(double.NaN, "TooLarge")]
    [InlineData(double.PositiveInfinity, "TooLarge")]
    public void A_value_outside_is_refused_for_its_reason(double metres, string code) => Assert.Equal(code, Side.Check(metres, "entered")?.Code);

    [Theory]
    [InlineData(0.001)]
    [InlineData(2.45)]
    [InlineData(30)]
    public void A_value_within_passes(double metres) => Assert.Null(Side.Check(metres, "entered"));

    [Fact]
    public void The_reason_says_what_was_entered_and_the_limit_in_the_units_of_the_reader()
    {
        var why = Side.Check(45, "45 m")!;
        Assert.Equal("“45 m” is more than 30000 mm.", why.Text(new Voice(Language.English, UnitSystem.Metric)));
        Assert.Equal("«45 m» es más de 98' 5 1/8\".", why.Text(new Voice(Language.Spanish, UnitSystem.Us)));
    }
}
