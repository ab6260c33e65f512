namespace HerdBot.Core.Facts;

/// <summary>What a message can say. The words people read and files hold are in <see cref="FactWords"/>.</summary>
public enum FactKind
{
    /// <summary>A birth; the animal is the dam.</summary>
    Birth,
    /// <summary>A body temperature, °F or °C.</summary>
    Temperature,
    /// <summary>A body weight.</summary>
    Weight,
    /// <summary>It stands.</summary>
    Standing,
    /// <summary>It nurses from a dam.</summary>
    Nursing,
    /// <summary>Colostrum given by hand.</summary>
    Colostrum,
    /// <summary>Milk given by hand.</summary>
    Feed,
    /// <summary>The cord stump was dipped or sprayed.</summary>
    CordDip,
    /// <summary>The cord stump is dry or off.</summary>
    CordDry,
    /// <summary>The cord bleeds; with a negation, it has stopped.</summary>
    CordBleeding,
    /// <summary>The placenta is out; the animal is the dam.</summary>
    Placenta,
    /// <summary>First dung.</summary>
    Meconium,
    /// <summary>Urine.</summary>
    Urine,
    /// <summary>A sign of labour; the animal is the dam.</summary>
    LabourSign,
    /// <summary>The waters broke; the animal is the dam.</summary>
    WaterBroke,
    /// <summary>What of the cria is in view; the animal is the dam.</summary>
    Presentation,
    /// <summary>A birth was helped; the animal is the dam.</summary>
    Assistance,
    /// <summary>A mating or a time in the pen with a male; the animal is the dam.</summary>
    Breeding,
    /// <summary>A scan or test for pregnancy; with a negation, open.</summary>
    PregnancyCheck,
    /// <summary>She rejected the male.</summary>
    SpitOff,
    /// <summary>A death.</summary>
    Death,
    /// <summary>A medicine given, as reported.</summary>
    Medication,
    /// <summary>A vaccine given, as reported.</summary>
    Vaccination,
    /// <summary>A blood test for antibodies, mg/dL.</summary>
    Igg,
    /// <summary>Anything worth keeping in words.</summary>
    Note,
    /// <summary>Somebody takes a job on.</summary>
    Claim,
    /// <summary>A task was done.</summary>
    Done,
    /// <summary>A task was not done yet.</summary>
    NotDone,
    /// <summary>Takes the last record back, or a named one.</summary>
    Undo,
    /// <summary>Mends an earlier record.</summary>
    Correction,
    /// <summary>An animal came, went or was named.</summary>
    Roster,
    /// <summary>The state of the kit.</summary>
    Kit,
    /// <summary>The weather.</summary>
    Weather,
    /// <summary>When is she due?</summary>
    QuestionDue,
    /// <summary>How is it, what was done?</summary>
    QuestionStatus,
    /// <summary>What is open?</summary>
    QuestionTasks,
    /// <summary>How is a thing done?</summary>
    QuestionHowto,
}
