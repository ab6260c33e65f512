using System.Collections.Immutable;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Core.Care;

/// <summary>A plan as it was worked out for an instant.</summary>
/// <param name="Farm">For which farm.</param>
/// <param name="Now">For which instant.</param>
/// <param name="Tasks">The plan.</param>
internal sealed record PlanMemo(Farm Farm, Instant Now, ImmutableArray<CareTask> Tasks);
