using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Review;

/// <summary>What the decision that stood at its end said of a task's day.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="Day">The day.</param>
/// <param name="State">The letter of its state.</param>
/// <param name="Rules">The rules that made the state.</param>
internal sealed record DecidedDay(Guid TaskId, LocalDate Day, string State, string[] Rules)
{
    public DayState DayState => State switch
    {
        "C" => DayState.Closed,
        "U" => DayState.Unknown,
        "L" => DayState.Limited,
        "O" => DayState.Open,
        _ => throw new InvalidOperationException($"The decision has the state {State}."),
    };
}

internal static class DecidedDays
{
    /// <returns>The days that something was decided about, the latest first.</returns>
    public static Task<List<DecidedDay>> ReadAsync(
        WorkWindowsDb db, IReadOnlyList<ReviewedTask> tasks, DaySpan days, CancellationToken cancellation)
    {
        var (ids, zones) = (tasks.Select(task => task.Id).ToArray(), tasks.Select(task => task.TimeZone).ToArray());
        // A decision is read once, however many days it stood: its bytes are the bulk of the work.
        return db.Database.SqlQuery<DecidedDay>($"""
            with standing as materialized (
              select asked.task_id, day.day, chosen.id
              from unnest({ids}, {zones}) as asked(task_id, time_zone)
              cross join lateral (select {days.First} + n as day from generate_series(0, {days.Count - 1}) n) day
              cross join lateral (
                select id from decisions d
                where d.task_id = asked.task_id and d.first_day <= day.day and d.last_day >= day.day
                  and d.evaluated_at < (day.day + 1)::timestamp at time zone asked.time_zone
                order by d.evaluated_at desc limit 1) chosen),
            said as materialized (
              select id, first_day, convert_from(content, 'UTF8')::jsonb as content
              from decisions where id in (select id from standing)),
            rules as materialized (
              select said.id, rule->>'id' as rule, rule->>'effect' as effect, truth,
                split_part(run, '/', 1)::date as first, split_part(run, '/', 2)::date as last
              from said
              cross join lateral jsonb_array_elements(content->'rules') rule
              cross join lateral unnest(array['holds', 'unknown']) truth
              cross join lateral jsonb_array_elements_text(rule->truth) run
              where rule->>'effect' in ('Closes', 'Limits')),
            stated as (
              select standing.*, substr(said.content->>'states', standing.day - said.first_day + 1, 1) as state
              from standing join said using (id))
            select task_id, day, state, array(
              select distinct rule from rules
              where rules.id = stated.id and stated.day between rules.first and rules.last and case state
                when 'C' then effect = 'Closes' and truth = 'holds'
                when 'U' then effect = 'Closes' and truth = 'unknown'
                when 'L' then effect = 'Limits' else false end) as rules
            from stated order by day desc, task_id
            """).ToListAsync(cancellation);
    }
}
