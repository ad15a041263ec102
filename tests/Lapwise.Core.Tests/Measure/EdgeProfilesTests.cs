using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using static Lapwise.Core.Tests.Measure.Benches;

namespace Lapwise.Core.Tests.Measure;

public sealed class EdgeProfilesTests
{
    private const double T = 0.04;

    [Fact]
    public void Full_round_takes_half_the_circle_of_its_thickness() =>
        Gen.Double[0.01, 0.1].Sample(t => AssertClose(Math.PI * t / 2, Width(ProfileShape.FullRound, 0, t), 1e-15));

    [Theory]
    [InlineData(ProfileShape.Square, 0)]
    [InlineData(ProfileShape.Eased, 0.003)]
    [InlineData(ProfileShape.Eased, 0.02)]
    [InlineData(ProfileShape.RoundOver, 0.012)]
    [InlineData(ProfileShape.RoundOver, 0.04)]
    [InlineData(ProfileShape.FullRound, 0)]
    [InlineData(ProfileShape.Bevel, 0.01)]
    [InlineData(ProfileShape.Cove, 0.015)]
    [InlineData(ProfileShape.Ogee, 0.015)]
    public void DevelopedWidth_is_the_length_of_the_drawn_shape(ProfileShape shape, double radiusM)
    {
        // The shape drawn as a polyline in section (out, down) and measured with a ruler: an account of its own.
        var drawn = Drawn(shape, radiusM).ToArray();
        var ruledM = drawn.Zip(drawn.Skip(1), (p, q) => p.DistanceTo(q)).Sum();
        AssertClose(ruledM, Width(shape, radiusM), 1e-6);
        Assert.Equal(T, drawn.Max(p => p.Y) - drawn.Min(p => p.Y), 1e-12);
    }

    [Fact]
    public void Eased_to_half_the_thickness_is_the_full_round() =>
        AssertClose(Width(ProfileShape.FullRound, 0), Width(ProfileShape.Eased, T / 2), 1e-12);

    [Fact]
    public void No_radius_leaves_the_straight_face() => Assert.All(
        (ProfileShape[])[ProfileShape.Eased, ProfileShape.RoundOver, ProfileShape.Bevel, ProfileShape.Cove, ProfileShape.Ogee],
        shape => AssertClose(T, Width(shape, 0), 1e-15));

    [Fact]
    public void Underside_and_return_come_on_top() =>
        AssertClose(T + 0.02 + 0.03, EdgeProfiles.DevelopedWidthM(new Profile(ProfileShape.Square, 0, 0.02, 0.03, 0), T)!.Value, 1e-15);

    [Fact]
    public void Measured_width_is_taken_as_it_was_read() =>
        Assert.Equal(0.071, EdgeProfiles.DevelopedWidthM(new Profile(ProfileShape.Measured, 0, 0, 0, 0.071), T));

    [Theory]
    [InlineData(ProfileShape.Eased, 0.0201)]
    [InlineData(ProfileShape.Ogee, 0.0201)]
    [InlineData(ProfileShape.RoundOver, 0.0401)]
    [InlineData(ProfileShape.Bevel, 0.0401)]
    [InlineData(ProfileShape.Cove, 0.0401)]
    [InlineData(ProfileShape.RoundOver, -0.001)]
    public void Profile_that_does_not_fit_is_a_fault_at_its_place(ProfileShape shape, double radiusM)
    {
        Assert.Null(EdgeProfiles.DevelopedWidthM(new Profile(shape, radiusM, 0, 0, 0), T));
        var fault = TheFault(Top(new OutlineSpec.Rectangle(2, 0.6), edges: new() { ['C'] = Open(shape, radiusM) }));
        Assert.Equal(("tops[0].edges.C.profile", "ProfileDoesNotFit"), (fault.Path, fault.Code));
    }

    [Fact]
    public void Measured_profile_without_a_width_is_a_fault() =>
        Assert.Equal("ProfileWithoutWidth", TheFault(Top(new OutlineSpec.Rectangle(2, 0.6), edges: new() { ['C'] = Open(ProfileShape.Measured) })).Code);

    private static double Width(ProfileShape shape, double radiusM, double thicknessM = T) =>
        EdgeProfiles.DevelopedWidthM(new Profile(shape, radiusM, 0, 0, 0), thicknessM)!.Value;

    /// <summary>The section from the rim of the flat down to the underside.</summary>
    private static IEnumerable<PointM> Drawn(ProfileShape shape, double r) => shape switch
    {
        ProfileShape.Eased => [.. Bend(new(-r, r), r, -90, 0), .. Bend(new(-r, T - r), r, 0, 90)],
        ProfileShape.RoundOver => [.. Bend(new(-r, r), r, -90, 0), new(0, T)],
        ProfileShape.FullRound => Bend(new(-T / 2, T / 2), T / 2, -90, 90),
        ProfileShape.Bevel => [new(-r, 0), new(0, r), new(0, T)],
        ProfileShape.Cove => [.. Bend(new(0, 0), r, 180, 90), new(0, T)],
        ProfileShape.Ogee => [.. Bend(new(-2 * r, r), r, -90, 0), .. Bend(new(0, r), r, 180, 90), new(0, T)],
        _ => [new(0, 0), new(0, T)],
    };

    private static IEnumerable<PointM> Bend(PointM centre, double r, double fromDeg, double toDeg) => Enumerable.Range(0, 2001)
        .Select(i => (fromDeg + ((toDeg - fromDeg) * i / 2000)) * Math.PI / 180)
        .Select(a => new PointM(centre.X + (r * Math.Cos(a)), centre.Y + (r * Math.Sin(a))));
}
