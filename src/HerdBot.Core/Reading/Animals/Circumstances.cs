using HerdBot.Core.Facts;
using HerdBot.Core.Herd;
using HerdBot.Core.Reading.Lexicon;
using HerdBot.Core.Reading.Scanning;
using NodaTime;

namespace HerdBot.Core.Reading.Animals;

/// <summary>What was said and recorded before, in the form the reader asks for it.</summary>
internal sealed class Circumstances
{
    private static readonly Duration IdleFresh = Duration.FromMinutes(15);
    private static readonly Duration TwinFresh = Duration.FromHours(4);
    private static readonly Duration LabourFresh = Duration.FromHours(12);
    private readonly Lazy<IReadOnlyList<(Mention Mention, Duration Age)>> said;
    private readonly Lazy<bool> saidLabour;
    private readonly Lazy<bool> saidScan;
    private readonly Lazy<bool> saidIdle;

    public Circumstances(ReadingContext context, bool readSaid = true)
    {
        Context = context;
        Herd = HerdIndex.Of(context.Herd);
        var scans = new Lazy<List<(Scan Scan, Duration Age)>>(() => readSaid ? [.. context.Said.Select(line => (Scanner.Read(line.Text, context), line.Age))] : []);
        said = new(() => [.. scans.Value.SelectMany(line => line.Scan.Items.Where(item => item.Mention?.Entries.Count > 0).Select(item => (item.Mention!, line.Age)))]);
        saidIdle = new(() => scans.Value.Count > 0 && scans.Value[^1] is var last && last.Age < IdleFresh && last.Scan.Has(Tag.Banter) && !last.Scan.Has(Tag.Weight));
        saidScan = new(() => scans.Value.Exists(line => line.Age < Duration.FromHours(2) && line.Scan.Has(Tag.Scan)));
        saidLabour = new(() => scans.Value.Exists(line => line.Age < LabourFresh && (line.Scan.Has(Tag.Labour) || line.Scan.Has(Tag.WaterBroke) || line.Scan.Has(Tag.Part))));
    }

    /// <summary>The last line before was small talk: a "he" may be anybody.</summary>
    public bool SaidIdle => saidIdle.Value;

    /// <summary>A pregnancy scan was spoken of just before.</summary>
    public bool SaidScan => saidScan.Value;

    public ReadingContext Context { get; }

    public HerdIndex Herd { get; }

    /// <summary>The mentions of named animals in earlier lines, oldest first.</summary>
    public IReadOnlyList<(Mention Mention, Duration Age)> Said => said.Value;

    public OpenReminder? Reply => At(Context.Reminders, Context.ReplyToReminder);

    public LoggedFact? ReplyLog => At(Context.Log, Context.ReplyToLog);

    public LoggedFact? LastLog => Context.Log.IsDefaultOrEmpty ? null : Context.Log[^1];

    /// <summary>Somebody is giving birth, or was said to be close.</summary>
    public bool Labour => Context.Herd.Any(one => one.State == HerdEntryState.InLabour) || saidLabour.Value
        || Context.Log.Any(fact => fact.Fact.Kind is FactKind.LabourSign or FactKind.WaterBroke or FactKind.Presentation && IsFresh(fact, LabourFresh));

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
        "near_birth" => Labour || Context.Herd.Any(one => one.State == HerdEntryState.Due) || Context.Log.Any(fact => fact.Fact.Kind == FactKind.Birth && IsFresh(fact, Duration.FromHours(48))),
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

    private static T? At<T>(System.Collections.Immutable.ImmutableArray<T> list, int? index) where T : class =>
        !list.IsDefaultOrEmpty && index is { } i && i >= 0 && i < list.Length ? list[i] : null;
}
