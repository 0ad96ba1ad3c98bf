using System.Collections.Immutable;
using WorkWindows.Planning.Cases;
using WorkWindows.Planning.Seasons;

namespace WorkWindows.Planning.Crews;

/// <summary>
/// What a crew's day has once, however many tasks it does: the drive to a place, a piece of equipment, being in an area,
/// having people that another crew has too.
/// </summary>
internal sealed class PlanMarks
{
    private const double MinutesPerHour = 60;
    private readonly PlanCase plan;
    private readonly Spacing spacing;
    private readonly FixedWork fixedWork;
    private readonly ImmutableArray<string> kinds;
    private readonly Dictionary<(int Crew, string Place), int> drives = [];
    private readonly Dictionary<(int Crew, int Pair), int> areas = [];
    private readonly Dictionary<(int Crew, string Kind), int> pieces = [];
    private readonly List<(int Crew, int Mark, string Person)> shared = [];
    private readonly ImmutableArray<Mark>.Builder made = ImmutableArray.CreateBuilder<Mark>();
    private readonly ImmutableArray<long>.Builder costs = ImmutableArray.CreateBuilder<long>();
    private readonly ImmutableArray<ImmutableArray<int>>.Builder exclusive = ImmutableArray.CreateBuilder<ImmutableArray<int>>();

    public PlanMarks(PlanCase plan, Spacing spacing, FixedWork fixedWork, Func<double, long> whole)
    {
        (this.plan, this.spacing, this.fixedWork) = (plan, spacing, fixedWork);
        kinds = [.. plan.Tasks.SelectMany(task => task.EquipmentKinds).Distinct().Order(StringComparer.Ordinal)];
        AddDrives(whole);
        AddAreas();
        AddPieces();
        AddShared();
    }

    public ImmutableArray<Mark> Marks => made.ToImmutable();

    public ImmutableArray<long> Costs => costs.ToImmutable();

    public ImmutableArray<ImmutableArray<int>> Exclusive => exclusive.ToImmutable();

    /// <summary>What there is of each kind that every crew may have, as resources that follow those of the crews.</summary>
    public IEnumerable<Resource> EquipmentPools() => kinds.Select(kind => new Resource(
    [
        .. Enumerable.Range(0, plan.Days.Length).Select(plan.DayAt).Select(day => Math.Max(0, plan.Equipment.Count(piece =>
            piece.Kind == kind && piece.CrewId is null && !piece.OutOfService.Contains(day)) - fixedWork.Taken(kind, day))),
    ]));

    /// <summary>The marks that a crew's work on a task sets on a day.</summary>
    public IEnumerable<Presence> Of(int taskIndex, int crewIndex, int dayIndex)
    {
        var task = plan.Tasks[taskIndex];
        var (crew, day) = (plan.Crews[crewIndex], plan.DayAt(dayIndex));
        if (drives.TryGetValue((crewIndex, task.Place), out var drive) && !fixedWork.IsAt(crew, task.Place, day))
            yield return new(drive, dayIndex);
        if (spacing.AreaOf[taskIndex] is { } area)
        {
            for (var pair = 0; pair < spacing.Pairs.Length; pair++)
            {
                if (spacing.Pairs[pair].First == area || spacing.Pairs[pair].Second == area)
                    yield return new(areas[(crewIndex, pair)], dayIndex);
            }
        }
        foreach (var kind in task.EquipmentKinds)
        {
            if (!fixedWork.HasOwn(crew, kind, day) && !fixedWork.Holds(crew, kind, day))
                yield return new(pieces[(crewIndex, kind)], dayIndex);
        }
        foreach (var (_, mark, person) in shared.Where(one => one.Crew == crewIndex))
        {
            if (crew.Present(day).Any(member => member.Id == person))
                yield return new(mark, dayIndex);
        }
    }

    private void AddDrives(Func<double, long> whole)
    {
        var places = plan.Tasks.Select(task => task.Place).Distinct().ToArray();
        for (var crew = 0; crew < plan.Crews.Length; crew++)
        {
            if (plan.Crews[crew].Base is not { } @base)
            {
                foreach (var place in places)
                    drives[(crew, place)] = Add([], 0);
                // Without a base nobody knows how long the way from one property to another is.
                exclusive.Add([.. places.Select(place => drives[(crew, place)])]);
                continue;
            }
            foreach (var place in places)
            {
                var minutes = plan.Travel.RoundTripMinutes(@base, place);
                if (minutes > 0)
                {
                    drives[(crew, place)] = Add(
                        [(crew, (int)Math.Ceiling(minutes))], whole(minutes / MinutesPerHour * plan.Weights.PointsPerTravelHour));
                }
            }
        }
    }

    private void AddAreas()
    {
        for (var pair = 0; pair < spacing.Pairs.Length; pair++)
        {
            for (var crew = 0; crew < plan.Crews.Length; crew++)
                areas[(crew, pair)] = Add([], 0);
            exclusive.Add([.. Enumerable.Range(0, plan.Crews.Length).Select(crew => areas[(crew, pair)])]);
        }
    }

    private void AddPieces()
    {
        for (var kind = 0; kind < kinds.Length; kind++)
        {
            for (var crew = 0; crew < plan.Crews.Length; crew++)
                pieces[(crew, kinds[kind])] = Add([(plan.Crews.Length + kind, 1)], 0);
        }
    }

    private void AddShared()
    {
        var crewsOf = plan.Crews.SelectMany(
            (crew, index) => crew.Members.Select(member => (member.Id, Crew: index)))
            .GroupBy(one => one.Id, one => one.Crew);
        foreach (var person in crewsOf.Where(crews => crews.Count() > 1))
        {
            var first = shared.Count;
            shared.AddRange(person.Select(crew => (crew, Add([], 0), person.Key)));
            exclusive.Add([.. shared.Skip(first).Select(one => one.Mark)]);
        }
    }

    private int Add(ImmutableArray<(int Resource, int Amount)> uses, long cost)
    {
        made.Add(new(uses));
        costs.Add(cost);
        return made.Count - 1;
    }
}
