using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Lapwise.Server.Phones;

/// <summary>What came of a code typed on a phone.</summary>
public enum CodeAnswer
{
    Right,
    Wrong,
    /// <summary>None is being shown: it was used, ran out, or was tried too often.</summary>
    NoneShown,
}

/// <summary>The one code that lets one device in: shown on the shop's computer, good for ten minutes, five tries and one use.</summary>
public sealed class PairingCode(TimeProvider time)
{
    public static readonly TimeSpan Life = TimeSpan.FromMinutes(10);
    public const int MostTries = 5;
    private const int Digits = 6;

    private readonly Lock changing = new();
    private string code = "";
    private long madeAt;
    private int tries;

    /// <summary>The code on show and how long it still holds; null: none. Counted by a clock that nobody can set back.</summary>
    public (string Code, TimeSpan Left)? Shown
    {
        get
        {
            lock (changing)
            {
                var left = Life - time.GetElapsedTime(madeAt);
                return code.Length > 0 && left > TimeSpan.Zero ? (code, left) : null;
            }
        }
    }

    /// <summary>Makes a new code; one shown before no longer holds.</summary>
    public string Show()
    {
        lock (changing)
        {
            (code, madeAt, tries) = (RandomNumberGenerator.GetInt32((int)Math.Pow(10, Digits)).ToString("D" + Digits, CultureInfo.InvariantCulture), time.GetTimestamp(), 0);
            return code;
        }
    }

    public void Hide()
    {
        lock (changing) code = "";
    }

    public CodeAnswer Try(string typed)
    {
        lock (changing)
        {
            if (Shown is null) return CodeAnswer.NoneShown;
            var digits = string.Concat(typed.Where(char.IsAsciiDigit));
            var right = CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(digits), Encoding.ASCII.GetBytes(code));
            if (right || ++tries >= MostTries) code = "";
            return right ? CodeAnswer.Right : code.Length == 0 ? CodeAnswer.NoneShown : CodeAnswer.Wrong;
        }
    }
}
