namespace HerdBot.Core.Reading.Tokens;

/// <summary>What sort of thing a token is.</summary>
internal enum TokenKind : byte
{
    Word,
    Number,
    Mark,
}

/// <summary>A word, a figure or a mark of the message.</summary>
/// <param name="Kind">Which of them.</param>
/// <param name="Start">Where it begins in the text.</param>
/// <param name="End">One past its last character.</param>
/// <param name="Text">Folded: lower case, no accents.</param>
internal readonly record struct Token(TokenKind Kind, int Start, int End, string Text)
{
    /// <summary>Lower case, accents kept.</summary>
    public string Exact { get; init; } = Text;

    /// <summary>Begins with a capital letter.</summary>
    public bool Capital { get; init; }

    /// <summary>Nothing stands between it and the token before.</summary>
    public bool Tight { get; init; }

    /// <summary>The figure of a number.</summary>
    public decimal Value { get; init; }

    /// <summary>Digits after the point; for "1,150" three, though it may mean thousands.</summary>
    public byte Decimals { get; init; }

    /// <summary>Digits before the point.</summary>
    public byte Digits { get; init; }

    /// <summary>The decimal mark was a comma.</summary>
    public bool Comma { get; init; }

    public bool Is(char mark) => Kind == TokenKind.Mark && Text.Length == 1 && Text[0] == mark;

    public bool LeadingZero => Kind == TokenKind.Number && Digits > 1 && Text[0] == '0';
}
