using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Measure;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Sections;
using static Lapwise.Core.Tests.Work.Sections.CutTops;

namespace Lapwise.Core.Tests.Work.Sections;

public sealed class SectioningTests
{
    [Fact]
    public void Ways_jumboIslandWalkableAllRound_cutsTwoRows()
    {
        var cut = FirstWay(Island(12 * FootM, 5 * FootM));
        Assert.Empty(cut.Reasons);
        Assert.All(cut.Sections, s => Assert.Equal(2.5 * FootM, s.ReachM, 1e-9));
        var rows = cut.Sections.ToLookup(s => s.StandSide);
        Assert.Equal(2, rows.Count);
        Assert.Equal(rows['A'].Count(), rows['C'].Count());
    }

    [Fact]
    public void Ways_counterAgainstTheWall_cutsStripsOfFullDepth()
    {
        var cut = FirstWay(Top(new OutlineSpec.Rectangle(8 * FootM, 25.5 * InchM), "wwow"));
        Assert.Empty(cut.Reasons);
        Assert.Equal(2, cut.Sections.Count);
        Assert.All(cut.Sections, s => Assert.Equal(('C', 0.0), (s.StandSide, s.DryPassDeg)));
        Assert.All(cut.Sections, s => Assert.Equal(25.5 * InchM, s.ReachM, 1e-9));
        Assert.Equal(25.5 * InchM, Assert.Single(cut.Seams).LengthM, 1e-9);
    }

    [Fact]
    public void Seams_fourSectionsMeetingAtAPoint_lapOnlyAlongLines()
    {
        var cut = Sectioning.UsualWay(Island(8 * FootM, 4 * FootM), OneAim);
        Assert.Equal(4, cut.Sections.Count);
        Assert.Equal(4, cut.Seams.Count);
        Assert.All(cut.Seams, s => Assert.True(cut.Sections[s.A].CentreM.DistanceTo(cut.Sections[s.B].CentreM) < (4 * FootM) + 1e-9));
    }

    [Fact]
    public void UsualWay_jumboIsland_isAGridOfSix()
    {
        var cut = Sectioning.UsualWay(Island(12 * FootM, 5 * FootM), OneAim);
        Assert.Equal(6, cut.Sections.Count);
        Assert.All(cut.Sections, s => Assert.Equal(4 * 2.5 * FootM * FootM, s.FaceM2, 1e-9));
    }

    [Fact]
    public void UsualWay_lKitchen_keepsToItsArms() =>
        Assert.All(Sectioning.UsualWay(LKitchen, OneAim).Sections.Where(s => s.Face.Kind == FaceKind.Flat), s => Assert.InRange(s.FaceM2, 0.2, 1.3));

    [Fact]
    public void Joint_acrossACounter_isABreakInEveryWay()
    {
        foreach (var cut in AllCuts(Top(new OutlineSpec.Rectangle(2.4, 0.6), "wwow", breaks: [new BreakLine('A', 0.9)])))
        {
            var joint = Assert.Single(cut.Seams, s => s.Kind == LapKind.Break);
            Assert.Equal(0.6, joint.LengthM, 1e-9);
            Assert.All(joint.Line, p => Assert.Equal(0.9, p.X, 1e-9));
        }
    }

    [Fact]
    public void Joint_inOneLegOfAU_leavesTheOtherLegAlone()
    {
        var top = Top(new OutlineSpec.U(3, 0.6, 2, 0.6, 2, 0.6), "wwooooow", breaks: [new BreakLine('B', 1.5)]);
        var joint = Assert.Single(FirstWay(top).Seams, s => s.Kind == LapKind.Break);
        Assert.Equal(0.6, joint.LengthM, 1e-9);
        Assert.All(joint.Line, p => Assert.InRange(p.X, 2.4 - 1e-9, 3 + 1e-9));
    }

    [Fact]
    public void Joint_throughACutout_isABreakInFrontAndBehind()
    {
        foreach (var cut in AllCuts(Top(new OutlineSpec.Rectangle(2.4, 0.6), "wwow", [Hole(1.2, 0.3, 0.6, 0.4)], [new BreakLine('A', 1.2)])))
            Assert.Equal([0.1, 0.1], cut.Seams.Where(s => s.Kind == LapKind.Break).Select(s => Math.Round(s.LengthM, 9)));
    }

    [Fact]
    public void Splash_isCutInLineWithTheFlat_andComesBeforeWhatOneLeansOver()
    {
        var cut = Cut(Top(new OutlineSpec.Rectangle(3, 0.62), "swow"));
        var flats = cut.Sections.Where(s => s.Face.Kind == FaceKind.Flat).ToList();
        var splashes = cut.Sections.Where(s => s.Face.Kind == FaceKind.Splash).ToList();
        var folds = cut.Seams.Where(s => s.Kind == LapKind.Fold).ToList();
        Assert.Equal(flats.Count, splashes.Count);
        Assert.All(splashes, s =>
        {
            var fold = Assert.Single(folds, f => f.B == s.Index);
            Assert.Equal([fold.A], s.LeansOver);
            Assert.Equal(('C', 90.0), (s.StandSide, s.DryPassDeg));
            Assert.Equal(0.62, s.ReachM, 1e-9);
        });
        Assert.All(flats, s => Assert.Empty(s.LeansOver));
    }

    /// <summary>Equal strips put their lines on the very quarters of the splash.</summary>
    [Theory]
    [InlineData(2.7432, 4)]
    [InlineData(2.7432, 5)]
    [InlineData(5.4864, 8)]
    public void Splash_inOnePiece_comesBeforeEveryStripOneLeansOver(double lengthM, int strips)
    {
        var lines = Enumerable.Range(1, strips - 1).Select(k => new SectionLine('C', lengthM * k / strips, 0, null, SectionLineOn.Flat));
        var top = Top(new OutlineSpec.Rectangle(lengthM, 0.6477), "cooo");
        var cut = Sectioning.Cut(top with { Top = top.Top with { SectionLines = [.. lines] } }, OneAim, new CutChoice.Given());
        var flats = cut.Sections.Where(s => s.Face.Kind == FaceKind.Flat).Select(s => s.Index).ToList();
        Assert.Equal(strips, flats.Count);
        Assert.Equal(flats, Assert.Single(cut.Sections, s => s.Face.Kind == FaceKind.Splash).LeansOver);
    }

    /// <summary>Over the corner the way to the foot runs on through the other arm, a centimetre inside its first strip.</summary>
    [Fact]
    public void Splash_reachedOverTheOtherArm_comesBeforeItsStripThere()
    {
        var cut = Sectioning.Cut(Top(new OutlineSpec.L(2.6941176470588237, 0.8571428571428571, 2.875, 0.6941176470588235), "sfosss"), OneAim, new CutChoice.Strips(CornerCut.Mitred, CutoutCut.AtTheEnds, UprightCut.LinedUp, 3));
        var strip = cut.Sections.Single(s => s.Face.Kind is FaceKind.Flat && s.Rings[0].Any(p => p.Y < 0.8571) && s.Rings[0].Any(p => p.Y > 1.2));
        Assert.All(cut.Sections.Where(s => s.Face.Id.EndsWith("splash E", StringComparison.Ordinal)), s => Assert.Contains(strip.Index, s.LeansOver));
    }

    [Fact]
    public void Splash_comesBeforeARowThatDoesNotTouchIt()
    {
        var top = Top(new OutlineSpec.Rectangle(2, 0.6), "cwow");
        var cut = Sectioning.Cut(top with { Top = top.Top with { SectionLines = [new('D', 0.3, 0, null, SectionLineOn.Flat)] } }, OneAim, new CutChoice.Given());
        Assert.Equal(2, Assert.Single(cut.Sections, s => s.Face.Kind == FaceKind.Splash).LeansOver.Count);
    }

    [Fact]
    public void Splash_withACaulkedJoint_staysWholeAndItsFoldIsABreak()
    {
        var cut = FirstWay(Top(new OutlineSpec.Rectangle(3, 0.62), "cwow"));
        Assert.Single(cut.Sections, s => s.Face.Kind == FaceKind.Splash);
        Assert.DoesNotContain(cut.Seams, s => s.Kind == LapKind.Fold);
        Assert.Equal(3, cut.Seams.Where(s => s.Kind == LapKind.Break).Sum(s => s.LengthM), 1e-9);
    }

    [Fact]
    public void Waterfall_isStoodAtItsOwnSide()
    {
        var cut = FirstWay(Top(new OutlineSpec.Rectangle(1.8, 0.9), "ooof"));
        var panel = Assert.Single(cut.Sections, s => s.Face.Kind == FaceKind.Waterfall);
        Assert.Equal('D', panel.StandSide);
        Assert.Equal(0, panel.StandAt.DistanceTo(new PointM(0, 0.45)), 1e-9);
        Assert.Empty(panel.LeansOver);
    }

    /// <summary>Too deep for one open side, the ends are rolled standing in front of the panels.</summary>
    [Fact]
    public void Waterfall_comesAfterWhatIsRolledStandingInFrontOfIt()
    {
        var cut = Cut(Top(new OutlineSpec.Rectangle(8 * FootM, 42 * InchM), "ofof", [Hole(4 * FootM, 21 * InchM, 30 * InchM, 20 * InchM)]));
        var panels = cut.Sections.Where(s => s.Face.Kind == FaceKind.Waterfall).ToLookup(s => s.StandSide, s => s.Index);
        Assert.Equal(['B', 'D'], panels.Select(p => p.Key!.Value).Order());
        var flats = cut.Sections.Where(s => s.Face.Kind == FaceKind.Flat).ToList();
        Assert.Contains(flats, s => s.StandSide == 'D');
        Assert.All(flats, s => Assert.Equal(panels[s.StandSide], s.LeansOver.Where(over => cut.Sections[over].Face.Kind == FaceKind.Waterfall)));
    }

    /// <summary>A round top with a panel all round: one stands at one end of the middle strip, the panels at its other end are behind nobody.</summary>
    [Fact]
    public void Waterfall_roundACircle_comesAfterWhatIsRolledInFrontOfIt_notAfterWhatIsRolledAcrossFromIt()
    {
        var cut = Cut(Top(new OutlineSpec.Circle(1.8333333333333333), "f"), CornerCut.WithTheLegs, CutoutCut.ThroughTheMiddle);
        foreach (var flat in cut.Sections.Where(s => s.Face.Kind == FaceKind.Flat))
        {
            var panels = flat.LeansOver.Where(over => cut.Sections[over].Face.Kind == FaceKind.Waterfall).ToList();
            Assert.NotEmpty(panels);
            Assert.All(panels, p => Assert.InRange(cut.Sections[p].StandAt.DistanceTo(flat.StandAt), 0, 1));
        }
    }

    [Fact]
    public void Corner_onItsOwn_makesAnLAPathOfStrips()
    {
        var cut = Cut(Top(new OutlineSpec.L(11 * FootM, 25.5 * InchM, 8 * FootM, 25.5 * InchM), "wwooow"));
        var laps = cut.Sections.Select(s => cut.Seams.Count(m => m.A == s.Index || m.B == s.Index)).Order();
        Assert.Equal([1, 1, .. Enumerable.Repeat(2, cut.Sections.Count - 2)], laps);
    }

    [Fact]
    public void Corner_25AndAHalfInchesDeep_isReachedWith36Inches() => Assert.Empty(FirstWay(LKitchen).Reasons);

    [Fact]
    public void Corner_mitred_isCutFromTheInnerToTheOuterCorner() =>
        Assert.Contains(Cut(Top(new OutlineSpec.L(3, 0.6, 2.5, 0.7), "wwooow"), CornerCut.Mitred).Seams, s => Math.Abs(s.LengthM - Math.Sqrt((0.6 * 0.6) + (0.7 * 0.7))) < 1e-9);

    [Theory]
    [InlineData(CutoutCut.ThroughTheMiddle, 1.3)]
    [InlineData(CutoutCut.AtTheEnds, 1.0)]
    [InlineData(CutoutCut.AtTheEnds, 1.6)]
    public void Cutout_isMetByALine(CutoutCut choice, double x)
    {
        var cut = Cut(Top(new OutlineSpec.Rectangle(3, 0.6), "wwow", [Hole(1.3, 0.3, 0.6, 0.4)]), cutouts: choice);
        Assert.Equal(2, cut.Seams.Count(s => Math.Abs(s.LengthM - 0.1) < 1e-9 && s.Line.All(p => Math.Abs(p.X - x) < 1e-9)));
    }

    /// <summary>Between the end of a cutout and a joint through its rounded corner a part of 45 mm² would lie.</summary>
    [Theory]
    [InlineData(0.8835)]
    [InlineData(0.8965)]
    public void Joint_throughTheRoundOfACutout_leavesNoSliver(double jointM)
    {
        var sink = Benches.Hole(1, 0.29, 0.24, 0.18, CutoutShape.RoundedRectangle, 0.02);
        foreach (var cut in AllCuts(Top(new OutlineSpec.Rectangle(2, 0.58), "wswo", [sink], [new BreakLine('A', jointM)])))
            Assert.All(cut.Sections, s => Assert.True(s.FaceM2 > 0.001, $"{cut.Choice}: {s.FaceM2 * 1e6:0} mm²"));
    }

    /// <summary>What lies in the middle is worked from both sides: 16 ft deep is 8 ft from either.</summary>
    [Fact]
    public void Reach_tooDeepFromBothSides_saysNoMoreThanHalfTheDepth()
    {
        var reason = Assert.Single(FirstWay(Island(60 * FootM, 16 * FootM)).Reasons);
        Assert.Contains("5' 0\" past the reach of 3' 0\"", reason.Text(Voice.Default), StringComparison.Ordinal);
        Assert.Contains("a reach of 8' 0\"", reason.Remedy(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void Reach_tooDeepForAnySide_isSaidAndCutAllTheSame()
    {
        var cut = FirstWay(Top(new OutlineSpec.Rectangle(3, 1.2), "wwow"));
        var reason = Assert.Single(cut.Reasons);
        Assert.Equal(("OutOfReach", Limit.AtYourWord), (reason.Code, reason.Limit));
        Assert.Contains("11 1/4\" past the reach of 3' 0\"", reason.Text(Voice.Default), StringComparison.Ordinal);
        Assert.Equal(3.6, cut.Sections.Sum(s => s.FaceM2), 1e-9);
        Assert.All(cut.Seams.Where(s => s.Line[0].X == s.Line[1].X), s => Assert.InRange(s.LengthM, 0, OneAim.ReachM + 1e-9));
        Assert.Equal(3 * OneAim.ReachM, cut.Sections.Where(s => s.ReachM < OneAim.ReachM + 1e-9).Sum(s => s.FaceM2), 1e-9);
        Assert.All(cut.Sections.Where(s => s.ReachM > OneAim.ReachM + 0.002), s => Assert.NotEmpty(s.LeansOver));
    }

    [Fact]
    public void Reach_noOpenSide_leavesNowhereToStand()
    {
        var cut = FirstWay(Top(new OutlineSpec.Rectangle(2, 0.6), "swww"));
        Assert.Equal("NowhereToStand", Assert.Single(cut.Reasons).Code);
        Assert.All(cut.Sections, s => Assert.Null(s.StandSide));
    }

    /// <summary>The far corner lies beyond the reach of the front, but not of the open end.</summary>
    [Fact]
    public void Reach_endOfARunBeyondTheFront_isCutToTheReachOfTheEnd()
    {
        var cut = Cut(Top(new OutlineSpec.U(12 * FootM, 25.5 * InchM, 8 * FootM, 25.5 * InchM, 6 * FootM, 30 * InchM), "wwwooowo"), CornerCut.WithTheLength);
        Assert.Empty(cut.Reasons);
        Assert.Contains(cut.Sections, s => s.StandSide == 'H' && Math.Abs(s.ReachM - (36 * InchM)) < 1e-9);
        Assert.All(cut.Seams, s => Assert.InRange(s.LengthM, 0, 31 * InchM));
    }

    [Fact]
    public void Reach_roundTableTooWideForOne_isCutIntoHalves()
    {
        var cut = FirstWay(Top(new OutlineSpec.Circle(1.3), "o"));
        Assert.Empty(cut.Reasons);
        Assert.All(cut.Sections, s => Assert.InRange(s.ReachM, 0.4, 0.66));
    }

    /// <summary>Cut by a joint, the larger part has two places far from both sides stood at, one farther than the other.</summary>
    [Fact]
    public void Reach_ofAUStoodAtTwoOfItsSides_isOfItsFarthestPoint()
    {
        var top = Top(new OutlineSpec.U(5.02, 0.88, 3, 0.68, 2.4, 0.61), "ffwoffos", breaks: [new BreakLine('A', 1.65)]);
        foreach (var section in Sectioning.Cut(top, OneAim, new CutChoice.WholeFaces()).Sections.Where(s => s.Face.Kind == FaceKind.Flat))
        {
            PointM[][] sides = [.. section.Face.StandLines.Select(l => l.Line.ToArray())];
            var outline = Polygon(section.Rings);
            var farthestM = 0.0;
            for (var x = 0.0; x <= 5.02; x += 0.01)
                for (var y = 0.0; y <= 3; y += 0.01)
                    if (outline.Covers(new NetTopologySuite.Geometries.Point(x, y))) farthestM = Math.Max(farthestM, sides.Min(s => FromM(s, new(x, y))));
            Assert.InRange(section.ReachM, farthestM - 0.002, farthestM + 0.01);
        }

        static double FromM(PointM[] side, PointM p) =>
            new NetTopologySuite.Geometries.LineSegment(side[0].X, side[0].Y, side[1].X, side[1].Y).Distance(new NetTopologySuite.Geometries.Coordinate(p.X, p.Y));
    }

    private static Cutout Hole(double alongM, double inM, double lengthM, double depthM) => Benches.Hole(alongM, inM, lengthM, depthM);
}
