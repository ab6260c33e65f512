using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;

namespace HerdBot.Core.Reading.Times;

/// <summary>The small words before a time: at, about, by, since, before, in, hace.</summary>
/// <param name="Used">How many items they take.</param>
internal readonly record struct Lead(int Used)
{
    private const int Most = 3;

    public bool At { get; init; }
    public bool Approx { get; init; }
    public bool Since { get; init; }
    public bool Before { get; init; }
    public bool In { get; init; }
    public bool Hace { get; init; }

    public static Lead Read(Scan scan, int i)
    {
        var lead = new Lead(0);
        for (var k = i; k < scan.Items.Count && lead.Used < Most; k++)
        {
            var item = scan.Items[k];
            if (item.Kind != ItemKind.Sense || !item.Tags.HasAny(Words))
            {
                break;
            }

            lead = lead.Plus(item);
        }

        return lead;
    }

    private static readonly TagSet Words = TagSet.Of(Tag.At, Tag.Approx, Tag.Since, Tag.StartRange, Tag.Before, Tag.InFuture, Tag.Hace);

    private Lead Plus(Item item) => this with
    {
        Used = Used + 1,
        At = At || item.Is(Tag.At),
        Approx = Approx || item.Is(Tag.Approx),
        Since = Since || item.Is(Tag.Since) || item.Is(Tag.StartRange),
        Before = Before || item.Is(Tag.Before),
        In = In || (item.Is(Tag.InFuture) && !item.Is(Tag.At)),
        Hace = Hace || item.Is(Tag.Hace),
    };
}
