using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class Alerts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "weather_alert_reports",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    station_id = table.Column<Guid>(type: "uuid", nullable: false),
                    fetched_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_weather_alert_reports", x => x.id);
                    table.ForeignKey(
                        name: "fk_weather_alert_reports_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_weather_alert_reports_stations_station_id",
                        column: x => x.station_id,
                        principalTable: "stations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "weather_alerts",
                columns: table => new
                {
                    report_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    @event = table.Column<string>(name: "event", type: "text", nullable: false),
                    starts_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ends_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_weather_alerts", x => new { x.report_id, x.kind, x.@event, x.starts_at, x.ends_at });
                    table.ForeignKey(
                        name: "fk_weather_alerts_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_weather_alerts_weather_alert_reports_report_id",
                        column: x => x.report_id,
                        principalTable: "weather_alert_reports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_weather_alert_reports_organization_id_station_id_fetched_at",
                table: "weather_alert_reports",
                columns: new[] { "organization_id", "station_id", "fetched_at" });

            migrationBuilder.CreateIndex(
                name: "ix_weather_alert_reports_station_id",
                table: "weather_alert_reports",
                column: "station_id");

            migrationBuilder.CreateIndex(
                name: "ix_weather_alerts_organization_id",
                table: "weather_alerts",
                column: "organization_id");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "weather_alerts");

            migrationBuilder.DropTable(
                name: "weather_alert_reports");
        }
    }
}
