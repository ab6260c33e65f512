using System.Collections.Frozen;
using HerdBot.Core.Facts;

namespace HerdBot.Core.Care;

/// <summary>The tasks that the plan knows. A task is answered by the fact of its own kind, or by "done".</summary>
public enum CareTaskName
{
    /// <summary>Look the newborn over.</summary>
    LookOver,
    /// <summary>A weak newborn.</summary>
    Weak,
    /// <summary>Dip the cord.</summary>
    CordDip,
    /// <summary>Watch a bleeding cord.</summary>
    CordWatch,
    /// <summary>Take the temperature.</summary>
    Temperature,
    /// <summary>Warm it.</summary>
    Warm,
    /// <summary>Does it stand?</summary>
    Standing,
    /// <summary>Does it nurse?</summary>
    Nursing,
    /// <summary>Get colostrum in.</summary>
    Colostrum,
    /// <summary>Feed by hand.</summary>
    Feed,
    /// <summary>First dung passed?</summary>
    Meconium,
    /// <summary>Urine passed?</summary>
    Urine,
    /// <summary>Weigh it.</summary>
    Weight,
    /// <summary>Antibody test.</summary>
    Igg,
    /// <summary>The morning's look.</summary>
    DayLook,
    /// <summary>Vaccination date.</summary>
    Vaccination,
    /// <summary>Weaning.</summary>
    Weaning,
    /// <summary>Look in on a dam near her time.</summary>
    LookIn,
    /// <summary>Labour is on.</summary>
    Labour,
    /// <summary>Parts in view or waters gone.</summary>
    Presentation,
    /// <summary>The dam bleeds.</summary>
    DamBleeding,
    /// <summary>Prolapse.</summary>
    Prolapse,
    /// <summary>Colic in the dam.</summary>
    DamColic,
    /// <summary>First look at the dam.</summary>
    DamLook,
    /// <summary>The placenta.</summary>
    Placenta,
    /// <summary>Udder and milk.</summary>
    Udder,
    /// <summary>She rejects it.</summary>
    Rejection,
    /// <summary>The dam's check on the next day.</summary>
    DamCheck,
    /// <summary>Phone the vet today.</summary>
    VetToday,
    /// <summary>When she may be bred again.</summary>
    Rebreed,
    /// <summary>Coat.</summary>
    Coat,
    /// <summary>Kit.</summary>
    Kit,
}

/// <summary>The written words of tasks.</summary>
public static class CareTaskWords
{
    /// <summary>Somebody phones the vet: a claim's task, not one of the plan's.</summary>
    public const string CallVet = "call vet";

    private static readonly FrozenDictionary<CareTaskName, string> Words =
        Enum.GetValues<CareTaskName>().ToFrozenDictionary(name => name, name => FactWords.Snake(name.ToString()));

    private static readonly FrozenDictionary<string, CareTaskName> ByWord =
        Words.ToFrozenDictionary(pair => pair.Value, pair => pair.Key);

    /// <summary>"cord_dip" for <see cref="CareTaskName.CordDip"/>.</summary>
    public static string Word(CareTaskName name) => Words[name];

    /// <summary>The task of a word; false where the plan has none.</summary>
    public static bool TryParse(string? word, out CareTaskName name)
    {
        name = default;
        return word is not null && ByWord.TryGetValue(word, out name);
    }
}
