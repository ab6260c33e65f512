namespace HerdBot.Core.Reading.Tokens;

/// <summary>Reads figures written in digits: 24, 23.5, 37,9, .4, 1,150, ½, 2nd.</summary>
internal static class NumberReader
{
    private const int MostDigits = 12;

    public static decimal Fraction(char c) => c switch { '½' => 0.5m, '¼' => 0.25m, '¾' => 0.75m, '⅓' => 0.333m, '⅔' => 0.667m, _ => 0m };

    public static int Read(string text, int start, int end, List<Token> tokens)
    {
        if (Fraction(text[start]) is > 0m and var fraction)
        {
            tokens.Add(Number(text, start, start + 1, fraction, tokens) with { Decimals = 1 });
            return start + 1;
        }

        var whole = Digits(text, start, end);
        if (Ordinal(text, whole, end))
        {
            tokens.Add(new Token(TokenKind.Word, start, whole + 2, text[start..(whole + 2)].ToLowerInvariant()) { Tight = Tokenizer.IsTight(tokens, start) });
            return whole + 2;
        }

        var stop = whole < end && text[whole] is '.' or ',' ? Digits(text, whole + 1, end) : whole;
        stop = stop == whole + 1 || SecondPoint(text, whole, stop, end) ? whole : stop;
        return Add(text, (start, whole, stop), tokens);
    }

    private static int Add(string text, (int Start, int Whole, int Stop) at, List<Token> tokens)
    {
        var (start, whole, stop) = at;
        var digits = text.AsSpan(start, Math.Min(whole, start + MostDigits) - start);
        var value = Figure(digits);
        var decimals = stop > whole ? Math.Min(stop - whole - 1, MostDigits) : 0;
        if (decimals > 0)
        {
            value += Figure(text.AsSpan(whole + 1, decimals)) / Power(decimals);
        }

        tokens.Add(Number(text, start, stop, value, tokens) with
        {
            Decimals = (byte)decimals,
            Digits = (byte)Math.Min(whole - start, 99),
            Comma = decimals > 0 && text[whole] == ',',
        });
        return stop;
    }

    private static Token Number(string text, int start, int end, decimal value, List<Token> tokens) =>
        new(TokenKind.Number, start, end, text[start..end]) { Value = value, Tight = Tokenizer.IsTight(tokens, start) };

    private static int Digits(string text, int i, int end)
    {
        while (i < end && char.IsAsciiDigit(text[i]))
        {
            i++;
        }

        return i;
    }

    private static bool Ordinal(string text, int at, int end) =>
        at + 1 < end && (at + 2 >= end || !char.IsLetterOrDigit(text[at + 2]))
        && text.AsSpan(at, 2) is "st" or "nd" or "rd" or "th";

    // "8.10.27" is a date, not a figure with a second point.
    private static bool SecondPoint(string text, int whole, int stop, int end) =>
        stop > whole && stop + 1 < end && text[stop] == text[whole] && char.IsAsciiDigit(text[stop + 1]);

    private static decimal Figure(ReadOnlySpan<char> digits)
    {
        var value = 0L;
        foreach (var digit in digits)
        {
            value = (value * 10) + (digit - '0');
        }

        return value;
    }

    private static decimal Power(int decimals)
    {
        var power = 1L;
        for (var i = 0; i < decimals; i++)
        {
            power *= 10;
        }

        return power;
    }
}
