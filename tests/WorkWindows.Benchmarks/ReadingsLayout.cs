namespace WorkWindows.Benchmarks;

/// <summary>
/// Ways in which the readings could lie, each as the statements that lead there from the service's own.
/// </summary>
internal static class ReadingsLayout
{
    private const string NewColumns = """
        station_id uuid not null, element smallint not null, date date not null,
        organization_id uuid not null default current_setting('workwindows.organization')::uuid,
        value double precision not null, quality_flag character(1), known_since timestamptz not null
        """;

    /// <summary>What every table of the service has, and what the application may do with it.</summary>
    private const string AsTheService = """
        alter table station_readings add foreign key (organization_id, station_id)
          references stations (organization_id, id) on delete cascade;
        alter table station_readings enable row level security;
        alter table station_readings force row level security;
        create policy own_organization on station_readings
          using (organization_id = nullif(current_setting('workwindows.organization', true), '')::uuid);
        grant select, insert, update on station_readings to workwindows_app;
        """;

    public static IReadOnlyDictionary<string, string> All { get; } = new SortedDictionary<string, string>
    {
        ["by-day"] = "select 1",
        ["by-element"] = """
            alter table station_readings drop constraint pk_station_readings,
              add constraint pk_station_readings primary key (station_id, element, date)
            """,
        ["partitioned"] = $"""
            drop table station_readings;
            create table station_readings ({NewColumns}, primary key (station_id, date, element))
              partition by hash (station_id);
            do $$ begin
              for part in 0..15 loop
                execute format('create table station_readings_%s partition of station_readings '
                  'for values with (modulus 16, remainder %s)', part, part);
              end loop;
            end $$;
            {AsTheService}
            """,
    };

    /// <summary>The readings once more, with a number of four bytes in the place of the station's sixteen.</summary>
    public const string Numbered = """
        create table numbered_readings as
          select number, element, date, organization_id, value, quality_flag, known_since
          from station_readings join (select id, row_number() over ()::int as number from stations) as stations
            on id = station_id;
        alter table numbered_readings add primary key (number, date, element);
        """;
}
