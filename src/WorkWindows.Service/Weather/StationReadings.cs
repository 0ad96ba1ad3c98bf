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
    private const string Receive = """
        create temporary table incoming_readings (
          element smallint not null, date date not null, value double precision not null, quality_flag character(1))
          on commit drop
        """;

    private const string Forget = "drop table incoming_readings";

    private const string Copy = "copy incoming_readings (element, date, value, quality_flag) from stdin (format binary)";

    /// <summary>
    /// Most rows of a file are there already and need no writing. A row that a statement inserted has no transaction
    /// that ended an earlier version of it.
    /// </summary>
    private const string Merge = """
        with changed as (
          insert into station_readings as stored (station_id, element, date, value, quality_flag)
          select @station, incoming.element, incoming.date, incoming.value, incoming.quality_flag
          from incoming_readings incoming
          left join station_readings kept
            on kept.station_id = @station and kept.element = incoming.element and kept.date = incoming.date
          where kept.station_id is null
            or (kept.value, kept.quality_flag) is distinct from (incoming.value, incoming.quality_flag)
          on conflict (station_id, element, date) do update
            set value = excluded.value, quality_flag = excluded.quality_flag
          returning xmax = 0 as is_new)
        select count(*) filter (where is_new), count(*) filter (where not is_new) from changed
        """;

    /// <summary>
    /// Adds readings to a station's record, in the place of those it has of the same day and element. Must run in a
    /// transaction.
    /// </summary>
    /// <param name="station">A station that is tracked; its coverage is brought up to date, the caller saves.</param>
    /// <param name="readings">Each day and element once.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<ImportCounts> MergeAsync(
        Station station, IReadOnlyCollection<DailyReading> readings, CancellationToken cancellation)
    {
        var connection = (NpgsqlConnection)db.Database.GetDbConnection();
        await ExecuteAsync(connection, Receive, cancellation);
        await CopyAsync(connection, readings, cancellation);
        var (created, updated) = await MergeAsync(connection, station.Id, cancellation);
        await ExecuteAsync(connection, Forget, cancellation);
        if (created + updated > 0)
        {
            station.RecordVersion++;
            await StationCoverage.UpdateAsync(db, station, cancellation);
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

    private static async Task<(int Created, int Updated)> MergeAsync(
        NpgsqlConnection connection, Guid station, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(Merge, connection);
        command.Parameters.AddWithValue("station", station);
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        await reader.ReadAsync(cancellation);
        return ((int)reader.GetInt64(0), (int)reader.GetInt64(1));
    }

    private static async Task ExecuteAsync(NpgsqlConnection connection, string sql, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(cancellation);
    }
}
