using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Lapwise.Documents;

/// <summary>
/// PDFsharp draws by chance the file's identifiers and the six letters before each embedded font's name. Here each gets
/// one of the same length that follows from the content: offsets stay right, and the same document is the same bytes.
/// </summary>
internal static partial class PdfNames
{
    public static byte[] Settle(byte[] pdf)
    {
        // Latin 1 maps every byte to one character and back.
        var text = Encoding.Latin1.GetString(pdf);
        var fonts = new Dictionary<string, string>(StringComparer.Ordinal);
        text = FontTag().Replace(text, tag =>
        {
            if (!fonts.TryGetValue(tag.Value, out var settled)) fonts[tag.Value] = settled = $"/AAAAA{(char)('A' + fonts.Count)}+";
            return settled;
        });
        text = Identifier().Replace(text, id => new string('0', id.Length));

        var digest = Convert.ToHexString(SHA256.HashData(Encoding.Latin1.GetBytes(text)));
        var guid = Guid.ParseExact(digest[..32], "N").ToString("D");
        text = Identifier().Replace(text, id => id.Length == guid.Length ? guid : digest[..id.Length]);
        return Encoding.Latin1.GetBytes(text);
    }

    [GeneratedRegex(@"/[A-Z]{6}\+(?=DejaVu)", RegexOptions.CultureInvariant, 30_000)]
    private static partial Regex FontTag();

    [GeneratedRegex(@"(?<=/ID\[<)[0-9A-F]{32}|(?<=/ID\[<[0-9A-F]{32}><)[0-9A-F]{32}|(?<=uuid:)[0-9a-f-]{36}", RegexOptions.CultureInvariant, 30_000)]
    private static partial Regex Identifier();
}
