namespace Lapwise.Drawings;

/// <summary>Where a text may go: the middle of its box, whether it reads upwards, and how large against its lettering.</summary>
internal readonly record struct Place(Spot At, bool Upright = false, double Scale = 1);

/// <summary>A drawing in the making: marks so far, and the room their texts take.</summary>
internal sealed class Sketch(double textSize)
{
    private readonly List<Mark> marks = [];
    private readonly List<Box> taken = [];
    private readonly List<Grip> grips = [];

    public double TextSize => textSize;
    public double Unit => textSize / 10;
    public IReadOnlyList<Mark> Marks => marks;
    public IReadOnlyList<Grip> Grips => grips;
    public PlanOnSheet? Plan { get; private set; }

    public void Line(Ink ink, params IReadOnlyList<Spot> points) => marks.Add(new Mark.Line(ink, points, Closed: false));
    public void Ring(Ink ink, IReadOnlyList<Spot> points) => marks.Add(new Mark.Line(ink, points, Closed: true));
    public void Area(Wash wash, params IReadOnlyList<IReadOnlyList<Spot>> rings) => marks.Add(new Mark.Area(wash, rings));
    public void Arrow(Ink ink, Spot from, Spot to) => marks.Add(new Mark.Arrow(ink, from, to));

    public void Grip(Grip grip) => grips.Add(grip);
    public void LaidAt(double perMetre) => Plan = new PlanOnSheet(new Spot(0, 0), perMetre);

    public double HeightOf(Lettering style) => textSize * Pens.Of(style).Scale * 1.1;
    public double WidthOf(Lettering style, string words) => TextWidth.Of(words, Pens.Of(style).Bold) * textSize * Pens.Of(style).Scale;

    /// <summary>Keeps texts out of a box.</summary>
    public void KeepClear(Box box) => taken.Add(box);

    public bool IsClear(Box box)
    {
        // Asked for every place of every text: a plain loop.
        foreach (var one in taken)
            if (box.Overlaps(one)) return false;
        return true;
    }

    /// <summary>
    /// Puts a text at the first place that is free and allowed; where none is, at the one that collides least,
    /// because a number missing from a drawing is worse than a crowded one.
    /// </summary>
    public Mark.Text Text(Lettering style, string words, IEnumerable<Place> places, Func<Box, bool>? allowed = null, bool behind = false)
    {
        var texts = places.Select(p => Made(style, words, p)).ToList();
        var chosen = texts.Find(t => Fits(t.Box, allowed)) ?? texts.MinBy(t => Crowding(t.Box))!;
        Put(chosen, behind);
        return chosen;
    }

    /// <summary>Puts the first wording that fits somewhere; null: none does and nothing was put.</summary>
    public Mark.Text? TryText(Lettering style, IEnumerable<string> wordings, IReadOnlyList<Place> places, Func<Box, bool>? allowed = null, bool behind = false)
    {
        foreach (var words in wordings)
        {
            foreach (var place in places)
            {
                var text = Made(style, words, place);
                if (!Fits(text.Box, allowed)) continue;
                Put(text, behind);
                return text;
            }
        }
        return null;
    }

    /// <summary>A line of text that starts at a place nobody else uses.</summary>
    public void TextFrom(Lettering style, string words, Spot start) =>
        Put(new Mark.Text(style, words, start, textSize * Pens.Of(style).Scale, Anchor.Start, Upright: false), behind: false);

    private Mark.Text Made(Lettering style, string words, Place place) =>
        new(style, words, place.At, textSize * Pens.Of(style).Scale * place.Scale, Anchor.Middle, place.Upright);

    private bool Fits(Box box, Func<Box, bool>? allowed) => IsClear(box) && (allowed is null || allowed(box));

    private double Crowding(Box box) => taken.Where(box.Overlaps).Sum(t =>
        (Math.Min(t.Right, box.Right) - Math.Max(t.Left, box.Left)) * (Math.Min(t.Bottom, box.Bottom) - Math.Max(t.Top, box.Top)));

    private void Put(Mark.Text text, bool behind)
    {
        if (behind) Area(Wash.Behind, text.Box.Grown(0.5 * Unit).Corners);
        marks.Add(text);
        taken.Add(text.Box);
    }

    /// <summary>The room all marks take.</summary>
    public Box Bounds() => Box.Over(marks.SelectMany(mark => mark switch
    {
        Mark.Line line => line.Points,
        Mark.Arrow arrow => [arrow.From, arrow.To],
        Mark.Area area => area.Rings[0],
        Mark.Text text => text.Box.Corners,
        _ => throw new ArgumentOutOfRangeException(nameof(mark)),
    }));

    /// <summary>Moves everything put so far.</summary>
    public void Move(Spot by)
    {
        for (var i = 0; i < marks.Count; i++)
        {
            marks[i] = marks[i] switch
            {
                Mark.Line line => line with { Points = [.. line.Points.Select(p => p + by)] },
                Mark.Arrow arrow => arrow with { From = arrow.From + by, To = arrow.To + by },
                Mark.Area area => area with { Rings = [.. area.Rings.Select(r => r.Select(p => p + by).ToList())] },
                Mark.Text text => text with { At = text.At + by },
                _ => throw new ArgumentOutOfRangeException(nameof(by)),
            };
        }
        if (Plan is { } plan) Plan = plan with { Origin = plan.Origin + by };
        for (var i = 0; i < grips.Count; i++) grips[i] = grips[i] with { Line = [.. grips[i].Line.Select(p => p + by)] };
        for (var i = 0; i < taken.Count; i++)
            taken[i] = new(taken[i].Left + by.X, taken[i].Top + by.Y, taken[i].Right + by.X, taken[i].Bottom + by.Y);
    }
}
