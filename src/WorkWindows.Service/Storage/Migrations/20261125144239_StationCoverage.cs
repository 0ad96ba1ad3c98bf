using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class StationCoverage : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<LocalDate>(
                name: "first_day",
                table: "stations",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "last_day",
                table: "stations",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "temperature_coverage",
                table: "stations",
                type: "double precision",
                nullable: false,
                defaultValue: 0.0);

            migrationBuilder.AddColumn<double>(
                name: "wind_coverage",
                table: "stations",
                type: "double precision",
                nullable: false,
                defaultValue: 0.0);

            migrationBuilder.AddColumn<bool>(
                name: "is_manual",
                table: "parcel_stations",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "first_day",
                table: "stations");

            migrationBuilder.DropColumn(
                name: "last_day",
                table: "stations");

            migrationBuilder.DropColumn(
                name: "temperature_coverage",
                table: "stations");

            migrationBuilder.DropColumn(
                name: "wind_coverage",
                table: "stations");

            migrationBuilder.DropColumn(
                name: "is_manual",
                table: "parcel_stations");
        }
    }
}
