using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class WeightsByUnit : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // What was set held for every unit. Changing a type is not bound by row-level security, as an update is.
            migrationBuilder.Sql("""
                alter table practice_settings drop constraint ck_practice_settings_points;
                alter table practice_settings alter column points_per_unit type jsonb using
                  case when points_per_unit is null then '{}'::jsonb else jsonb_build_object(
                    'acres', points_per_unit, 'stems', points_per_unit, 'feet', points_per_unit, 'hours', points_per_unit) end;
                alter table practice_settings rename column points_per_unit to points;
                alter table practice_settings alter column points set not null;
                """);

            migrationBuilder.AddColumn<string>(
                name: "follow_up_years",
                table: "planning_settings",
                type: "jsonb",
                nullable: false,
                defaultValueSql: "'{}'::jsonb");
            migrationBuilder.Sql("alter table planning_settings alter column follow_up_years drop default");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "follow_up_years",
                table: "planning_settings");

            migrationBuilder.Sql("""
                alter table practice_settings alter column points drop not null;
                alter table practice_settings alter column points type numeric using (points ->> 'acres')::numeric;
                alter table practice_settings rename column points to points_per_unit;
                alter table practice_settings add constraint ck_practice_settings_points check (points_per_unit >= 0);
                """);
        }
    }
}
