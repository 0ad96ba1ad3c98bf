using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class PersonalLinks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "land_key",
                table: "notice_settings",
                type: "text",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_notice_settings_land_key",
                table: "notice_settings",
                column: "land_key",
                unique: true);

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_notice_settings_land_key",
                table: "notice_settings");

            migrationBuilder.DropColumn(
                name: "land_key",
                table: "notice_settings");
        }
    }
}
