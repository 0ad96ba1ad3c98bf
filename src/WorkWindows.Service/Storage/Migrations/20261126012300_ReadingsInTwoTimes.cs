using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class ReadingsInTwoTimes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Instant>(
                name: "record_changed_at",
                table: "stations",
                type: "timestamp with time zone",
                nullable: true);

            // When the rows that are there became known was not recorded. They count as known from the beginning: a
            // question about any day until now finds what there is, as it did before, and the day of this migration is
            // not taken for the day on which decades of weather became known. A constant default rewrites no row.
            migrationBuilder.AddColumn<Instant>(
                name: "known_since",
                table: "station_readings",
                type: "timestamp with time zone",
                nullable: false,
                defaultValueSql: "'-infinity'");
            migrationBuilder.Sql("alter table station_readings alter column known_since drop default");

            // By day, as readings come: measured in docs/decisions/0008-readings-in-two-times.md.
            migrationBuilder.DropPrimaryKey(name: "pk_station_readings", table: "station_readings");

            migrationBuilder.AddPrimaryKey(
                name: "pk_station_readings",
                table: "station_readings",
                columns: ["station_id", "date", "element"]);

            migrationBuilder.CreateTable(
                name: "feed_states",
                columns: table => new
                {
                    station_id = table.Column<Guid>(type: "uuid", nullable: false),
                    feed = table.Column<string>(type: "text", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    first_attempt_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    last_attempt_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    last_success_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    newest_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    last_error = table.Column<string>(type: "text", nullable: true),
                    told_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_feed_states", x => new { x.station_id, x.feed });
                    table.ForeignKey(
                        name: "fk_feed_states_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_feed_states_stations_station_id",
                        column: x => x.station_id,
                        principalTable: "stations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "superseded_readings",
                columns: table => new
                {
                    station_id = table.Column<Guid>(type: "uuid", nullable: false),
                    element = table.Column<short>(type: "smallint", nullable: false),
                    date = table.Column<LocalDate>(type: "date", nullable: false),
                    known_since = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    value = table.Column<double>(type: "double precision", nullable: false),
                    quality_flag = table.Column<char>(type: "character(1)", nullable: true),
                    known_until = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_superseded_readings", x => new { x.station_id, x.date, x.element, x.known_since });
                    table.CheckConstraint("ck_superseded_readings_known", "known_since < known_until");
                    table.ForeignKey(
                        name: "fk_superseded_readings_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_superseded_readings_stations_station_id",
                        column: x => x.station_id,
                        principalTable: "stations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_feed_states_organization_id",
                table: "feed_states",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_superseded_readings_organization_id",
                table: "superseded_readings",
                column: "organization_id");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "feed_states");

            migrationBuilder.DropTable(
                name: "superseded_readings");

            migrationBuilder.DropPrimaryKey(name: "pk_station_readings", table: "station_readings");

            migrationBuilder.AddPrimaryKey(
                name: "pk_station_readings",
                table: "station_readings",
                columns: ["station_id", "element", "date"]);

            migrationBuilder.DropColumn(
                name: "record_changed_at",
                table: "stations");

            migrationBuilder.DropColumn(
                name: "known_since",
                table: "station_readings");
        }
    }
}
