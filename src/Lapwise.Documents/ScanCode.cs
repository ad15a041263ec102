using Lapwise.Drawings;
using QRCoder;

namespace Lapwise.Documents;

/// <summary>An address as squares for a phone's camera: QR code, ISO/IEC 18004, error correction M.</summary>
internal static class ScanCode
{
    // The standard asks for four empty squares round it.
    private const int QuietSquares = 4;

    /// <param name="side">Width and height of the drawing, quiet border included, in points.</param>
    public static Drawing Of(string address, double side, string title)
    {
        using var squares = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.M);
        // The library leaves the same border round its squares.
        var count = squares.ModuleMatrix.Count - (2 * QuietSquares);
        var one = side / (count + (2 * QuietSquares));
        var runs = new List<Mark>();
        for (var row = 0; row < count; row++)
        {
            var dark = squares.ModuleMatrix[row + QuietSquares];
            for (var from = 0; from < count; from++)
            {
                if (!dark[from + QuietSquares]) continue;
                var to = from;
                while (to < count && dark[to + QuietSquares]) to++;
                // Each run a hair larger, so that no reader sees a white line between two rows.
                var box = new Box((from + QuietSquares) * one, (row + QuietSquares) * one, ((to + QuietSquares) * one) + 0.02, ((row + 1 + QuietSquares) * one) + 0.02);
                runs.Add(new Mark.Area(Wash.Stand, [box.Corners]));
                from = to;
            }
        }

        return new Drawing(side, side, side / 60, title, address, runs);
    }
}
