namespace Lapwise.Drawings;

// A drawing is a list of marks on a sheet, x right and y down, in the sheet's units (CSS pixels on screen, points on
// paper). It knows nothing of SVG or PDF: each renderer is a switch over the four marks.

/// <summary>One finished drawing.</summary>
/// <param name="Title">What it shows, in a few words.</param>
/// <param name="Description">The same content in sentences, for those who listen to the page.</param>
/// <param name="Unit">A tenth of the text size: pens are as heavy as the text is large.</param>
public sealed record Drawing(double Width, double Height, double Unit, string Title, string Description, IReadOnlyList<Mark> Marks)
{
    /// <summary>What a page may let a person take hold of; paper shows none of it.</summary>
    public IReadOnlyList<Grip> Grips { get; init; } = [];

    /// <summary>Where a top's own plan lies on the sheet; null: nothing is drawn to scale.</summary>
    public PlanOnSheet? Plan { get; init; }
}

/// <summary>How the plan of a top is laid on the sheet: not turned, at one scale.</summary>
/// <param name="Origin">Where the plan's origin lies.</param>
/// <param name="PerMetre">Sheet units in a metre.</param>
public sealed record PlanOnSheet(Spot Origin, double PerMetre)
{
    public Spot At(double xM, double yM) => Origin + new Spot(xM * PerMetre, yM * PerMetre);
}

/// <summary>A line of a drawing that can be tapped, or moved square to itself.</summary>
/// <param name="Index">Which one; the letter of a side.</param>
/// <param name="Line">Where it lies.</param>
/// <param name="PerMetre">How far it goes on the sheet when it is moved a metre; nothing where it stays.</param>
public sealed record Grip(int Index, IReadOnlyList<Spot> Line, Spot PerMetre);

/// <summary>A place on the sheet.</summary>
public readonly record struct Spot(double X, double Y)
{
    public static Spot operator +(Spot a, Spot b) => new(a.X + b.X, a.Y + b.Y);
    public static Spot operator -(Spot a, Spot b) => new(a.X - b.X, a.Y - b.Y);
    public static Spot operator *(Spot a, double k) => new(a.X * k, a.Y * k);
    public double Length => Math.Sqrt((X * X) + (Y * Y));
    public double Dot(Spot other) => (X * other.X) + (Y * other.Y);
    /// <summary>Turned a quarter to the left as seen on the sheet: the outward side of a clockwise walk.</summary>
    public Spot Outward => new(Y, -X);
    public Spot Unit => Length is > 0 and var length ? this * (1 / length) : new Spot(1, 0);
    // A record would print its members, and two of them are spots themselves.
    public override string ToString() => FormattableString.Invariant($"({X:0.##}, {Y:0.##})");
}

/// <summary>An upright rectangle on the sheet.</summary>
public readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    public bool Overlaps(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
    public double Width => Right - Left;
    public double Height => Bottom - Top;
    public IReadOnlyList<Spot> Corners => [new(Left, Top), new(Right, Top), new(Right, Bottom), new(Left, Bottom)];
    public Spot Nearest(Spot to) => new(Math.Clamp(to.X, Left, Math.Max(Left, Right)), Math.Clamp(to.Y, Top, Math.Max(Top, Bottom)));
    public Box Grown(double by) => new(Left - by, Top - by, Right + by, Bottom + by);
    public static Box Over(IEnumerable<Spot> spots)
    {
        var (left, top, right, bottom) = (double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);
        foreach (var (x, y) in spots) (left, top, right, bottom) = (Math.Min(left, x), Math.Min(top, y), Math.Max(right, x), Math.Max(bottom, y));
        return new(left, top, right, bottom);
    }
    public static Box Round(Spot centre, double width, double height) =>
        new(centre.X - (width / 2), centre.Y - (height / 2), centre.X + (width / 2), centre.Y + (height / 2));
}

/// <summary>One thing put on the sheet.</summary>
public abstract record Mark
{
    private Mark() { }

    public sealed record Line(Ink Ink, IReadOnlyList<Spot> Points, bool Closed) : Mark;
    /// <summary>A filled surface; the first ring is the outside, further rings are holes.</summary>
    public sealed record Area(Wash Wash, IReadOnlyList<IReadOnlyList<Spot>> Rings) : Mark;
    /// <summary>A line with its point at <paramref name="To"/>.</summary>
    public sealed record Arrow(Ink Ink, Spot From, Spot To) : Mark
    {
        /// <summary>The shaft, and the two strokes of the point.</summary>
        public IReadOnlyList<IReadOnlyList<Spot>> Strokes(double unit)
        {
            var along = (To - From).Unit * (4 * unit);
            var aside = along.Outward * 0.5;
            return [[From, To], [To - along + aside, To, To - along - aside]];
        }
    }
    /// <param name="At">Middle of the text's box; for <see cref="Anchor.Start"/> the middle of its left side.</param>
    /// <param name="Upright">Reads upwards along a vertical side.</param>
    public sealed record Text(Lettering Style, string Words, Spot At, double Size, Anchor Anchor, bool Upright) : Mark
    {
        /// <summary>The room the words take, by the lettering's own widths.</summary>
        public Box Box
        {
            get
            {
                var (across, down) = (TextWidth.Of(Words, Pens.Of(Style).Bold) * Size, Size * 1.1);
                var centre = Anchor == Anchor.Start ? new Spot(At.X + (across / 2), At.Y) : At;
                return Upright ? Box.Round(centre, down, across) : Box.Round(centre, across, down);
            }
        }
    }
}

public enum Anchor { Middle, Start }

/// <summary>What a line means.</summary>
public enum Ink { OpenEdge, WallEdge, SplashEdge, WaterfallEdge, Panel, Cutout, Section, LapGood, LapNarrow, LapLost, Break, Dimension, Diagonal, Hatch, Suspect, DryPass, Joining, LapWaiting, Untouched, Leader, Curve, SecondCurve, Level, Moment }

/// <summary>What a filled surface means.</summary>
public enum Wash { Top, Panel, Hole, FirstPerson, SecondPerson, ThirdPerson, FurtherPerson, Stand, Untouched, Wet, Joined, Shut, Behind }

/// <summary>What a text is.</summary>
public enum Lettering { Side, Letter, Number, Clock, LapGood, LapNarrow, LapLost, Break, Name, Legend, Note, Warning }

/// <summary>The room a drawing may take.</summary>
/// <param name="Width">Width of the sheet.</param>
/// <param name="MostHeight">Height the top itself may take; legend and notes come below it.</param>
/// <param name="TextSize">Size of the ordinary text.</param>
public readonly record struct Sheet(double Width, double MostHeight, double TextSize)
{
    /// <summary>A phone held upright, in CSS pixels.</summary>
    public static readonly Sheet Phone = new(366, 380, 10.5);
    /// <summary>The same for what fills it from top to foot.</summary>
    public static readonly Sheet Tall = new(352, 520, 11);
    /// <summary>A wide page, in CSS pixels.</summary>
    public static readonly Sheet Wide = new(760, 560, 12);
}
