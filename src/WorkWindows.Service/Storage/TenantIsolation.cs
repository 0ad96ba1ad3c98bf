using Microsoft.EntityFrameworkCore.Migrations;

namespace WorkWindows.Service.Storage;

/// <summary>What every migration ends with: it covers all tables there are by then and may be repeated.</summary>
public static class TenantIsolation
{
    public static void IsolateTenants(this MigrationBuilder migration)
    {
        ArgumentNullException.ThrowIfNull(migration);
        migration.Sql(BindReferences);
        migration.Sql(LightenReadings);
        migration.Sql(ShowOwnRowsOnly);
        migration.Sql(KeepDecisions);
        migration.Sql(KeepAudit);
        migration.Sql(KeepWhatWasKnown);
        migration.Sql(KeepSafety);
        migration.Sql(AnswerBeforeSignIn);
    }

    /// <summary>
    /// References between rows of organizations include the organization, so that a row cannot point into another's:
    /// row-level security does not bind the checks of foreign keys.
    /// </summary>
    private const string BindReferences = """
        do $$
        declare reference record;
        begin
          for reference in
            select con.conname as name, con.conrelid::regclass as child, con.confrelid::regclass as parent,
                   child_column.attname as column_name, parent_column.attname as key_name,
                   replace(con.confrelid::regclass::text, '"', '') as parent_name,
                   case con.confdeltype when 'c' then 'cascade' when 'r' then 'restrict'
                     when 'n' then format('set null (%I)', child_column.attname) else 'no action' end as on_delete
            from pg_constraint con
            join pg_attribute child_column
              on child_column.attrelid = con.conrelid and child_column.attnum = con.conkey[1]
            join pg_attribute parent_column
              on parent_column.attrelid = con.confrelid and parent_column.attnum = con.confkey[1]
            where con.contype = 'f' and cardinality(con.conkey) = 1
              and con.connamespace = current_schema()::regnamespace
              and con.confrelid <> 'organizations'::regclass
          loop
            execute format('create unique index if not exists %I on %s (organization_id, %I)',
              'ix_' || reference.parent_name || '_organization_id_' || reference.key_name,
              reference.parent, reference.key_name);
            execute format('alter table %s drop constraint %I, add constraint %I '
              'foreign key (organization_id, %I) references %s (organization_id, %I) on delete %s',
              reference.child, reference.name, reference.name, reference.column_name,
              reference.parent, reference.key_name, reference.on_delete);
          end loop;
        end $$;
        """;

    /// <summary>
    /// A reading's reference to its station or forecast includes the organization already, and nobody asks for all
    /// readings of an organization: a second reference and an index would double the time that bulk loading takes.
    /// </summary>
    private const string LightenReadings = """
        alter table station_readings drop constraint if exists fk_station_readings_organizations_organization_id;
        alter table forecast_readings drop constraint if exists fk_forecast_readings_organizations_organization_id;
        alter table if exists superseded_readings
          drop constraint if exists fk_superseded_readings_organizations_organization_id;
        drop index if exists ix_station_readings_organization_id, ix_forecast_readings_organization_id,
          ix_superseded_readings_organization_id;
        """;

    private const string ShowOwnRowsOnly = $"""
        do $$
        declare owned record;
        begin
          for owned in
            select attrelid::regclass as name, attname as organization
            from pg_attribute join pg_class on pg_class.oid = attrelid
            where relnamespace = current_schema()::regnamespace and relkind in ('r', 'p') and not attisdropped
              and (attname = 'organization_id' or (relname = 'organizations' and attname = 'id'))
          loop
            execute format('alter table %s enable row level security', owned.name);
            execute format('alter table %s force row level security', owned.name);
            execute format('drop policy if exists own_organization on %s', owned.name);
            execute format('create policy own_organization on %s '
              'using (%I = nullif(current_setting(%L, true), %L)::uuid) '
              'with check (%I = nullif(current_setting(%L, true), %L)::uuid)',
              owned.name, owned.organization, '{CurrentOrganization.Setting}', '',
              owned.organization, '{CurrentOrganization.Setting}', '');
            execute format('grant select, insert, update, delete on %s to {DatabaseAddress.AppRole}', owned.name);
          end loop;
        end $$;
        """;

    private const string KeepDecisions = $"""
        revoke update, delete on decisions, weather_snapshots, stored_packs from {DatabaseAddress.AppRole};
        alter table decisions drop constraint if exists fk_decisions_weather_snapshots;
        alter table decisions add constraint fk_decisions_weather_snapshots
          foreign key (organization_id, snapshot_hash) references weather_snapshots (organization_id, hash)
          deferrable initially deferred;
        """;

    /// <summary>An exception can be withdrawn and no more. The first migration has neither table yet.</summary>
    private const string KeepAudit = $"""
        do $$
        begin
          if to_regclass('audit_entries') is not null then
            revoke update, delete on audit_entries from {DatabaseAddress.AppRole};
          end if;
          if to_regclass('rule_overrides') is not null then
            revoke update, delete on rule_overrides from {DatabaseAddress.AppRole};
            grant update (withdrawn_at, withdrawn_by_id) on rule_overrides to {DatabaseAddress.AppRole};
          end if;
        end $$;
        """;

    /// <summary>
    /// What was known of the weather on a past day must be found again: readings change only by way of the superseded
    /// ones, and forecasts and alerts are added to. The first migrations do not have all of the tables yet.
    /// </summary>
    private const string KeepWhatWasKnown = $"""
        do $$
        declare kept record;
        begin
          revoke delete on station_readings from {DatabaseAddress.AppRole};
          for kept in
            select to_regclass(name) as name
            from unnest(array['superseded_readings', 'forecasts', 'forecast_readings', 'weather_alert_reports',
              'weather_alerts']) as name
            where to_regclass(name) is not null
          loop
            execute format('revoke update, delete on %s from {DatabaseAddress.AppRole}', kept.name);
          end loop;
        end $$;
        """;

    /// <summary>
    /// Signs of life, calls, incidents, signatures and records of work are added to; a watch moves on, a missed check-in is
    /// taken over or cleared, a plan is published or discarded, and none goes away. The first migrations do not have the
    /// tables yet.
    /// </summary>
    private const string KeepSafety = $"""
        do $$
        declare kept record;
        begin
          for kept in
            select to_regclass(name) as name, columns
            from (values ('check_ins', null), ('watch_contacts', null), ('alarm_calls', null), ('incidents', null),
              ('checklist_signatures', null), ('work_records', null), ('work_photos', null),
              ('crew_plans', 'status, decided_at, decided_by'),
              ('crew_watches', 'due_at, ended_at'),
              ('missed_check_ins', 'next_call_at, acknowledged_at, acknowledged_by, cleared_at')) as safety (name, columns)
            where to_regclass(name) is not null
          loop
            execute format('revoke update, delete on %s from {DatabaseAddress.AppRole}', kept.name);
            if kept.columns is not null then
              execute format('grant update (%s) on %s to {DatabaseAddress.AppRole}', kept.columns, kept.name);
            end if;
          end loop;
        end $$;
        """;

    /// <summary>
    /// The two questions that must be answered before an organization is known. They run as the owner of the tables,
    /// who is let through on the two tables they read.
    /// </summary>
    private const string AnswerBeforeSignIn = $"""
        drop policy if exists before_sign_in on people;
        create policy before_sign_in on people for select to current_user using (true);
        drop policy if exists before_sign_in on organizations;
        create policy before_sign_in on organizations for select to current_user using (true);

        create or replace function organization_of_login(normalized_name text) returns uuid
          language sql stable security definer set search_path = pg_catalog, public, pg_temp
          as $$ select organization_id from people where normalized_user_name = normalized_name $$;

        create or replace function organizations_on_schedule() returns table (id uuid, time_zone text)
          language sql stable security definer set search_path = pg_catalog, public, pg_temp
          as $$ select id, time_zone from organizations order by id $$;

        revoke execute on function organization_of_login(text), organizations_on_schedule() from public;
        grant execute on function organization_of_login(text), organizations_on_schedule()
          to {DatabaseAddress.AppRole};
        """;
}
