using System.Buffers.Binary;

namespace Lapwise.Store;

/// <summary>
/// Walks the segments of a JPEG (ITU-T T.81, annex B) and looks for those that tell more than the picture: Exif and XMP with
/// place, time and camera (APP1), IPTC (APP13), other applications' own, and comments.
/// </summary>
internal static class JpegContent
{
    private const byte Marker = 0xFF, StartOfImage = 0xD8, EndOfImage = 0xD9, StartOfScan = 0xDA, Comment = 0xFE, App0 = 0xE0, App15 = 0xEF;

    /// <summary>JFIF, colour profile, and how colours are coded: needed to show the picture as it is.</summary>
    private static bool IsPartOfThePicture(byte marker) => marker is App0 or 0xE2 or 0xEE;

    public static PhotoAnswer Look(ReadOnlySpan<byte> jpeg)
    {
        if (jpeg.Length < 4 || jpeg[0] != Marker || jpeg[1] != StartOfImage || jpeg[^2] != Marker || jpeg[^1] != EndOfImage) return PhotoAnswer.NotAPhoto;
        var at = 2;
        while (at + 4 <= jpeg.Length && jpeg[at] == Marker)
        {
            var marker = jpeg[at + 1];
            if (marker == StartOfScan) return PhotoAnswer.Kept;
            if (marker == Comment || (marker is >= App0 and <= App15 && !IsPartOfThePicture(marker))) return PhotoAnswer.TellsMore;
            at += 2 + BinaryPrimitives.ReadUInt16BigEndian(jpeg[(at + 2)..]);
        }

        return PhotoAnswer.NotAPhoto;
    }
}
