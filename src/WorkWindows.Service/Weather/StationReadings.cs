using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using NpgsqlTypes;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Stores readings of a station in bulk.</summary>
public sealed class StationReadings(WorkWindowsDb db)
{
    /// <summary>
    /// Tables that were just filled have no statistics yet, and the planner would take them for small and compare each
    /// row with each.
    /// </summary>
    private const string Receive = """
        create temporary table incoming_readings (
          element smallint not null, date date not null, value double precision not null, quality_flag character(1))
          on commit drop;
        set local enable_nestloop = off
        """;

    private const string Copy = "copy incoming_readings (element, date, value, quality_flag) from stdin (format binary)";

    private const string Change = """
        update station_readings kept set value = incoming.value, quality_flag = incoming.quality_flag
        from incoming_readings incoming
        where kept.station_id = @station and kept.element = incoming.element and kept.date = incoming.date
          and (kept.value, kept.quality_flag) is distinct from (incoming.value, incoming.quality_flag)
        """;

    private const string Add = """
        insert into station_readings (station_id, element, date, value, quality_flag)
        select @station, element, date, value, quality_flag from incoming_readings incoming
        where not exists (
          select from station_readings kept
          where kept.station_id = @station and kept.element = incoming.element and kept.date = incoming.date)
        """;

    private const string Forget = "drop table incoming_readings; set local enable_nestloop = on";

    /// <summary>
    /// Adds readings to a station's record, in the place of those it has of the same day and element. Must run in an
    /// <see cref="OrganizationChange"/>, so that nobody adds to the same record meanwhile.
    /// </summary>
    /// <param name="station">A station that is tracked; its coverage is brought up to date, the caller saves.</param>
    /// <param name="readings">Each day and element once.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<ImportCounts> MergeAsync(
        Station station, IReadOnlyCollection<DailyReading> readings, CancellationToken cancellation)
    {
        var connection = (NpgsqlConnection)db.Database.GetDbConnection();
        await ExecuteAsync(connection, Receive, null, cancellation);
        await CopyAsync(connection, readings, cancellation);
        var updated = await ExecuteAsync(connection, Change, station.Id, cancellation);
        var created = await ExecuteAsync(connection, Add, station.Id, cancellation);
        await ExecuteAsync(connection, Forget, null, cancellation);
        if (created + updated > 0)
        {
            station.RecordVersion++;
            await StationCoverage.UpdateAsync(db, station, readings, cancellation);
        }
        return new(created, updated, readings.Count - created - updated);
    }

    private static async Task CopyAsync(
        NpgsqlConnection connection, IEnumerable<DailyReading> readings, CancellationToken cancellation)
    {
        await using var writer = await connection.BeginBinaryImportAsync(Copy, cancellation);
        foreach (var reading in readings)
        {
            // Written to a buffer; waiting for each value would take longer than sending all of them.
            writer.StartRow();
            writer.Write((short)reading.Element, NpgsqlDbType.Smallint);
            writer.Write(reading.Date.ToDateOnly(), NpgsqlDbType.Date);
            writer.Write(reading.Value, NpgsqlDbType.Double);
            if (reading.QualityFlag is { } flag)
                writer.Write(flag.ToString(CultureInfo.InvariantCulture), NpgsqlDbType.Char);
            else
                writer.WriteNull();
        }
        await writer.CompleteAsync(cancellation);
    }

    private static async Task<int> ExecuteAsync(
        NpgsqlConnection connection, string sql, Guid? station, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        if (station is { } id)
            command.Parameters.AddWithValue("station", id);
        return await command.ExecuteNonQueryAsync(cancellation);
    }
}
