namespace Offcuts.Core.Yard;

/// <summary>
/// The check character of ISO/IEC 7064 MOD 37,36 over digits and capital letters. It catches every single wrong
/// character and most, not all, swaps of two neighbours.
/// </summary>
/// <remarks>Source: ISO/IEC 7064, hybrid system MOD 37,36.</remarks>
public static class CheckCharacter
{
    private const string Values = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    /// <summary>The check character of <paramref name="body"/>. Throws where it holds anything but 0-9 and A-Z.</summary>
    public static char Of(string body) => Values[(37 - Run(body)) % 36];

    /// <summary>True where the last character is the check character of those before it.</summary>
    public static bool Fits(string whole) =>
        whole.Length >= 2 && whole.All(Values.Contains) && Of(whole[..^1]) == whole[^1];

    private static int Run(string body)
    {
        var carry = 36;
        foreach (var character in body)
        {
            var value = Values.IndexOf(character);
            if (value < 0) throw new ArgumentException($"\"{character}\" is no digit or capital letter", nameof(body));
            var sum = (carry + value) % 36;
            carry = (sum == 0 ? 36 : sum) * 2 % 37;
        }

        return carry;
    }
}
