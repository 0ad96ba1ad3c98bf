using WorkWindows.Engine.Practices;
using WorkWindows.Service.Crews;

namespace WorkWindows.Service.Tasks;

/// <summary>What tasks are worth to the consultant, points.</summary>
public static class TaskPoints
{
    /// <param name="task">The task.</param>
    /// <param name="setting">What the organization has set for its practice; null for the usual.</param>
    public static double Of(PlannedTask task, PracticeSetting? setting)
    {
        if (task.Points is { } own)
            return (double)own;
        if (task is not { Quantity: { } quantity, QuantityUnit: { } unit })
            return PracticeWeights.WithoutQuantity;
        var perUnit = setting?.Points.TryGetValue(PracticeWeights.Weighed(unit), out var set) == true
            ? (double)set
            : PracticeWeights.PerUnit(PracticeCatalogue.Find(task.PracticeId)!, unit);
        return (double)quantity * perUnit;
    }
}
