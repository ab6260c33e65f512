namespace HerdBot.Core.Care;

/// <summary>A dam's tasks: while a birth is under way, after it, and whenever she is ill.</summary>
internal static class DamPlan
{
    public static IEnumerable<CareTask> Of(DamView dam) =>
        [.. Labour.Tasks(dam), .. AfterBirth.Tasks(dam), .. Milk.Tasks(dam), .. DamTroubles.Tasks(dam), .. Assisted.Tasks(dam)];
}
