using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>What a vet ordered, as a dated thing to do.</summary>
/// <param name="Task">What; <see cref="CareTaskName.VetToday"/> for anything that is only in the words.</param>
/// <param name="Words">As it was told.</param>
/// <param name="ADay">Times a day; null where it goes by hours, or is once.</param>
/// <param name="Every">Hours between; null where it goes by days.</param>
/// <param name="From">The first day.</param>
/// <param name="Until">The last day, included.</param>
/// <param name="EndSaid">False where nobody said how long: then a few days, and the answer says so.</param>
public sealed record VetOrder(CareTaskName Task, string Words, int? ADay, int? Every, LocalDate From, LocalDate Until, bool EndSaid);
