namespace HerdBot.Core.Reading.Lexicon;

/// <summary>Folds letters: lower case, without accents where asked.</summary>
internal static class Letters
{
    private const string Accented = "àáâãäåçèéêëìíîïñòóôõöøùúûüýÿ";
    private const string Plain = "aaaaaaceeeeiiiinoooooouuuuyy";

    public static char Fold(char c)
    {
        if (c < 128)
        {
            return char.ToLowerInvariant(c);
        }

        var lower = char.ToLowerInvariant(c);
        var at = Accented.IndexOf(lower, StringComparison.Ordinal);
        return at >= 0 ? Plain[at] : lower;
    }

    public static string Fold(string text) => IsFolded(text) ? text : string.Create(text.Length, text, static (to, from) =>
    {
        for (var i = 0; i < from.Length; i++)
        {
            to[i] = Fold(from[i]);
        }
    });

    private static bool IsFolded(string text)
    {
        foreach (var c in text)
        {
            if (c >= 128 || char.IsAsciiLetterUpper(c))
            {
                return false;
            }
        }

        return true;
    }

    public static bool IsApostrophe(char c) => c is '\'' or '’' or '‘' or '`' or '´' or 'ʼ';
}
