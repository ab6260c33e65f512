using HerdBot.Core.Facts;

namespace HerdBot.Core.Reading.Animals;

/// <summary>Whom facts of a kind are about.</summary>
internal enum Whom : byte
{
    /// <summary>Whoever is named.</summary>
    Anyone,
    /// <summary>The dam.</summary>
    Dam,
    /// <summary>The newborn.</summary>
    Baby,
    /// <summary>Nobody.</summary>
    Nobody,
}

/// <summary>Which kinds are the dam's and which the newborn's.</summary>
internal static class Kinship
{
    public static Whom Of(FactKind kind) => kind switch
    {
        FactKind.Birth or FactKind.LabourSign or FactKind.WaterBroke or FactKind.Presentation or FactKind.Assistance
            or FactKind.Placenta or FactKind.Breeding or FactKind.PregnancyCheck or FactKind.SpitOff => Whom.Dam,
        FactKind.Standing or FactKind.Nursing or FactKind.Colostrum or FactKind.Feed or FactKind.CordDip or FactKind.CordDry
            or FactKind.CordBleeding or FactKind.Meconium or FactKind.Urine or FactKind.Weight or FactKind.Igg or FactKind.Temperature
            or FactKind.Death => Whom.Baby,
        FactKind.Kit or FactKind.Weather or FactKind.QuestionTasks or FactKind.QuestionHowto => Whom.Nobody,
        _ => Whom.Anyone,
    };

    /// <summary>Whom a task is about.</summary>
    public static Whom OfTask(string? task) => task switch
    {
        "placenta" or "labour" or "presentation" or "dam_bleeding" or "prolapse" or "dam_colic" or "dam_look" or "udder"
            or "rejection" or "dam_check" or "rebreed" or "look_in" => Whom.Dam,
        _ => Whom.Baby,
    };
}
