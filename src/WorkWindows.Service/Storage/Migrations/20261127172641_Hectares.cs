using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class Hectares : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "hectares",
                table: "notice_settings",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "hectares",
                table: "notice_settings");
        }
    }
}
