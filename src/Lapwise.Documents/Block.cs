using Lapwise.Drawings;

namespace Lapwise.Documents;

// A sheet is a list of blocks from top to bottom. What it says is decided once, here; how it is set on paper or on a
// page is a switch over the blocks in each writer.

/// <summary>One document, ready to be written.</summary>
/// <param name="Language">BCP 47 code of its language.</param>
/// <param name="Footer">Stands at the foot of every page.</param>
public sealed record Document(string Title, string Language, Paper Paper, string Footer, IReadOnlyList<Block> Blocks)
{
    /// <summary>What it was made from, whole: in the file's own data, for a program to compare; null: it was made from nothing that is kept.</summary>
    public string? Fingerprint { get; init; }
}

/// <summary>A paper size in points (1/72 in).</summary>
public sealed record Paper(string CssName, double WidthPt, double HeightPt)
{
    /// <summary>ISO 216: 210 mm × 297 mm.</summary>
    public static readonly Paper A4 = new("A4", 595.276, 841.89);
    /// <summary>ANSI/ASME Y14.1 size A: 8 1/2 in × 11 in.</summary>
    public static readonly Paper Letter = new("letter", 612, 792);
    public const double MarginPt = 42;
    public double InnerWidthPt => WidthPt - (2 * MarginPt);
}

public abstract record Block
{
    private Block() { }

    public sealed record Title(string Text, string Below) : Block;
    /// <param name="Level">1: a part of the sheet. 2: within it.</param>
    /// <param name="OwnPage">Begins a page, so that its part can be handed out for itself.</param>
    public sealed record Heading(int Level, string Text, bool OwnPage = false) : Block;
    /// <summary>The one line to see first.</summary>
    public sealed record Verdict(Tone Tone, string Text) : Block;
    public sealed record Paragraph(string Text) : Block;
    public sealed record Items(IReadOnlyList<Item> Lines) : Block;
    /// <summary>Short values under their names, side by side.</summary>
    public sealed record Facts(IReadOnlyList<Fact> Pairs) : Block;
    /// <param name="Narrow">Few short columns: on paper it may run in two halves side by side.</param>
    public sealed record Table(IReadOnlyList<Column> Columns, IReadOnlyList<Row> Rows, bool Narrow = false) : Block;
    /// <summary>Drawings side by side; each stays whole on its page.</summary>
    public sealed record Figures(IReadOnlyList<Figure> Drawings) : Block;
    /// <summary>Lines to sign on, side by side, each with what it is for under it.</summary>
    public sealed record Signatures(IReadOnlyList<string> Names) : Block;
    /// <summary>A slip to work from: never split over two pages.</summary>
    public sealed record Ticket(string Name, IReadOnlyList<Fact> Large, IReadOnlyList<Fact> Small, IReadOnlyList<Item> Lines) : Block
    {
        /// <summary>Squares for a phone, at the right; null: none.</summary>
        public Drawing? Code { get; init; }
    }
}

/// <param name="Caption">Stands above the drawing.</param>
public sealed record Figure(string Caption, Drawing Drawing)
{
    /// <summary>The same drawing no higher than this, as legible; null: so low it is not.</summary>
    public Func<double, Drawing?> Within { get; init; } = _ => null;
}

public enum Tone { Works, Narrow, DoesNotWork }

public sealed record Fact(string Name, string Value);

/// <param name="Mark">A sign before the line; the words say the same.</param>
public sealed record Item(ItemMark Mark, string Text);

public enum ItemMark { Point, Stop, Caution, Tick }

/// <param name="Share">Width against the other columns.</param>
public sealed record Column(string Heading, double Share, bool Right = false);

/// <param name="Strong">Set in bold: it needs an eye.</param>
public sealed record Row(IReadOnlyList<string> Cells, bool Strong = false);
