using HerdBot.Core.Facts;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using NodaTime;

namespace HerdBot.Core.Reading.Animals;

/// <summary>What was said and recorded before, in the form the reader asks for it.</summary>
internal sealed class Circumstances
{
    private static readonly Duration IdleFresh = Duration.FromMinutes(15);
    private static readonly Duration TwinFresh = Duration.FromHours(4);
    private static readonly TagSet LabourWords = TagSet.Of(Tag.Labour, Tag.WaterBroke, Tag.Part);
    private static readonly Duration LabourFresh = Duration.FromHours(12);
    private static readonly Duration ScanFresh = Duration.FromHours(2);
    private readonly List<(Scan Scan, Duration Age)> lines = [];
    private bool? labour;
    private LoggedFact[]? births;

    public Circumstances(ReadingContext context)
    {
        Context = context;
        Herd = HerdIndex.Of(context.Herd);
    }

    /// <summary>The last line before was small talk: a "he" may be anybody.</summary>
    public bool SaidIdle => Lines().FirstOrDefault() is { Scan: not null } last && last.Age < IdleFresh && last.Scan.Has(Tag.Banter) && !last.Scan.Has(Tag.Weight);

    /// <summary>A pregnancy scan was spoken of just before.</summary>
    public bool SaidScan => Lines().Any(line => line.Age < ScanFresh && line.Scan.Has(Tag.Scan));

    public ReadingContext Context { get; }

    public HerdIndex Herd { get; }

    /// <summary>The mentions of named animals in earlier lines, newest first; a line is read when somebody looks back so far.</summary>
    public IEnumerable<(Mention Mention, Duration Age)> Said => Lines()
        .SelectMany(line => line.Scan.Items.Where(item => item.Mention?.Entries.Count > 0).Reverse().Select(item => (item.Mention!, line.Age)));

    public OpenReminder? Reply => At(Context.Reminders, Context.ReplyToReminder);

    public LoggedFact? ReplyLog => At(Context.Log, Context.ReplyToLog);

    public LoggedFact? LastLog => Context.Log.IsDefaultOrEmpty ? null : Context.Log[^1];

    /// <summary>Somebody is giving birth, or was said to be close.</summary>
    public bool Labour => labour ??= Herd.AnyInLabour
        || Context.Log.Any(fact => fact.Fact.Kind is FactKind.LabourSign or FactKind.WaterBroke or FactKind.Presentation && IsFresh(fact, LabourFresh))
        || Lines().Any(line => line.Age < LabourFresh && line.Scan.Tags.HasAny(LabourWords));

    /// <summary>A birth was recorded a short while ago: there may be one more.</summary>
    public bool JustBorn => Context.Log.Any(fact => fact.Fact.Kind == FactKind.Birth && IsFresh(fact, TwinFresh));

    /// <summary>The cord has come up before.</summary>
    public bool CordKnown => Context.Log.Any(fact => fact.Fact.Kind is FactKind.CordBleeding or FactKind.CordDip) || Context.Reminders.Any(one => one.Task is "cord_watch" or "cord_dip");

    /// <summary>A placenta is waited for.</summary>
    public bool PlacentaOpen => Reply?.Task == "placenta" || (Reply is null && Context.Reminders.Any(one => one.Task == "placenta"))
        || (Reply is null && Context.Log.Any(fact => fact.Fact.Kind == FactKind.Birth && IsFresh(fact, Duration.FromHours(24))
            && !Context.Log.Any(other => other.Fact is { Kind: FactKind.Placenta, Neg: false } && other.Fact.Animal == fact.Fact.Animal)));

    public bool Holds(string? condition) => condition switch
    {
        null => true,
        "labour" => Labour,
        "near_birth" => Labour || Herd.AnyDue || Context.Log.Any(fact => fact.Fact.Kind == FactKind.Birth && IsFresh(fact, Duration.FromHours(48))),
        "cord_known" => CordKnown,
        "cord_bleeds" => Reply?.Task == "cord_watch" || (Reply is null && Context.Reminders.Any(one => one.Task == "cord_watch")),
        "placenta_open" => PlacentaOpen,
        "placenta_asked" => Reply?.Task == "placenta" || ReplyLog?.Fact.Kind == FactKind.Placenta,
        _ => false,
    };

    public bool IsFresh(LoggedFact fact, Duration age) => fact.At is { } at && Context.Now.ToInstant() - at < age;

    /// <summary>The task that a bare answer is about: that of the reply, else of the only reminder.</summary>
    public OpenReminder? SoleReminder => Reply ?? (Context.Reminders.Length == 1 ? Context.Reminders[0] : null);

    /// <summary>What a bare figure would be about: the reply, the newest reading, the newest reminder for one.</summary>
    public FactKind? Topic()
    {
        if (Reply is { } reply)
        {
            return Reading(reply.Task);
        }

        if (ReplyLog is { } log)
        {
            return log.Fact.Kind;
        }

        var open = Context.Reminders.Select(one => Reading(one.Task)).OfType<FactKind>().Distinct().ToArray();
        var recent = Context.Log.LastOrDefault(fact => fact.Fact.Kind is FactKind.Temperature or FactKind.Weight && IsFresh(fact, Duration.FromHours(3)));
        return open.Length == 1 ? open[0] : recent?.Fact.Kind;
    }

    /// <summary>Readings that are open or were just taken.</summary>
    public bool IsTopic(FactKind kind) => Reply is { } reply ? Reading(reply.Task) == kind
        : Context.Reminders.Any(one => Reading(one.Task) == kind) || Context.Log.Any(fact => fact.Fact.Kind == kind && IsFresh(fact, Duration.FromHours(6)));

    public static FactKind? Reading(string? task) => task switch
    {
        "temperature" or "warm" => FactKind.Temperature,
        "weight" => FactKind.Weight,
        "igg" => FactKind.Igg,
        _ => null,
    };

    public LocalDateTime? BornAt(int entry) =>
        entry >= 0 && Herd.Entry(entry).Born is { Time: { } time } born ? born.Date + time : null;

    /// <summary>The newest birth on record of a dam; null where none.</summary>
    public LoggedFact? BirthOf(string dam)
    {
        births ??= [.. Context.Log.Where(fact => fact.Fact is { Kind: FactKind.Birth, Animal: not null })];
        for (var i = births.Length - 1; i >= 0; i--)
        {
            if (string.Equals(births[i].Fact.Animal, dam, StringComparison.OrdinalIgnoreCase))
            {
                return births[i];
            }
        }

        return null;
    }

    private IEnumerable<(Scan Scan, Duration Age)> Lines()
    {
        for (var back = 0; back < Context.Said.Length; back++)
        {
            if (back == lines.Count)
            {
                var line = Context.Said[^(back + 1)];
                lines.Add((Scanner.Read(line.Text, Context), line.Age));
            }

            yield return lines[back];
        }
    }

    private static T? At<T>(System.Collections.Immutable.ImmutableArray<T> list, int? index) where T : class =>
        !list.IsDefaultOrEmpty && index is { } i && i >= 0 && i < list.Length ? list[i] : null;
}
