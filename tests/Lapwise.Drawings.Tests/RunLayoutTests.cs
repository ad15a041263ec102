using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;
using Lapwise.Shared;

namespace Lapwise.Drawings.Tests;

/// <summary>The picture of a run on a phone in a gloved hand.</summary>
public class RunLayoutTests
{
    /// <summary>What a phone of 390 px leaves the picture, and the least that is read at arm's length.</summary>
    private const double PhonePx = 358;
    private const double MostHighPx = 506;
    private const double LeastPx = 15;

    public static TheoryData<string> EverySample() => [.. Samples.Names];

    private static IEnumerable<RunLayout> Layouts(string sample)
    {
        var whole = Samples.Whole(sample);
        foreach (var (work, i) in whole.Work.Coats.Select((w, i) => (w, i)))
        {
            var plan = Issuing.Issue(whole.Job, i, work, whole.Supply.Coats[i], [], UnitSystem.Us, "", "1");
            foreach (var top in plan.Sections.GroupBy(s => s.Top, StringComparer.Ordinal)) yield return new RunLayout(top);
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Every_number_is_large_enough_to_read_on_a_phone(string sample) => Assert.All(Layouts(sample), layout =>
    {
        var px = Math.Min(PhonePx / layout.Box.Width, MostHighPx / layout.Box.Height);
        Assert.All(layout.Pieces, p => Assert.True(p.Letter * px >= LeastPx, $"{p.Section.Top} {p.Section.Id}: {p.Letter * px:0.0} px"));
    });

    [Theory]
    [MemberData(nameof(EverySample))]
    public void No_number_lies_over_another_or_over_a_section_that_is_not_its_own(string sample) => Assert.All(Layouts(sample), layout =>
    {
        var boxes = layout.Pieces.Select(p => (Piece: p, Box: RunLayout.BoxOf(p.Section.Id, p.Number, p.Letter))).ToList();
        foreach (var (piece, box) in boxes)
        {
            Assert.All(boxes.Where(b => b.Piece != piece), other => Assert.False(box.Overlaps(other.Box), $"{piece.Section.Id} over {other.Piece.Section.Id}"));
            Assert.All(box.Corners, c => Assert.True(c.X >= layout.Box.Left && c.X <= layout.Box.Right && c.Y >= layout.Box.Top && c.Y <= layout.Box.Bottom));
            if (piece.Leader is { } leader)
            {
                Assert.All(layout.Pieces, p => Assert.DoesNotContain(box.Corners.Append(piece.Number), c => Shapes.Contains(p.Rings, c)));
                Assert.True(Shapes.Contains(piece.Rings, leader.To));
            }
            else Assert.True(Shapes.Contains(piece.Rings, piece.Number));
        }
    });

    [Fact]
    public void Numbers_of_the_narrow_sections_round_a_sink_stand_beside_them_and_all_others_inside()
    {
        var pieces = Layouts("l-kitchen").SelectMany(l => l.Pieces).ToList();
        Assert.Contains(pieces, p => p.Leader is not null);
        Assert.True(pieces.Count(p => p.Leader is null) > pieces.Count(p => p.Leader is not null));
        Assert.DoesNotContain(Layouts("jumbo-island").SelectMany(l => l.Pieces), p => p.Leader is not null && p.Section.Face is Core.Measure.FaceKind.Flat);
    }

    [Fact]
    public void A_top_without_sections_has_an_empty_picture() => Assert.Empty(new RunLayout([]).Pieces);
}
