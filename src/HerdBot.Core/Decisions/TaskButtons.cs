using HerdBot.Core.Care;

namespace HerdBot.Core.Decisions;

/// <summary>What the first button of a task does.</summary>
public static class TaskButtons
{
    /// <summary>True where a press alone says that it is done; a reading needs its figure.</summary>
    public static bool DoneByPress(CareTaskName task) => !OwnKinds.IsReading(task);
}
