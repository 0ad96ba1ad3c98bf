using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class WorkCorrections : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_work_records_amounts",
                table: "work_records");

            migrationBuilder.DropCheckConstraint(
                name: "ck_work_records_hours",
                table: "work_records");

            migrationBuilder.AddCheckConstraint(
                name: "ck_work_records_hours",
                table: "work_records",
                sql: "person_hours <> 0");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_work_records_hours",
                table: "work_records");

            migrationBuilder.AddCheckConstraint(
                name: "ck_work_records_amounts",
                table: "work_records",
                sql: "quantity >= 0 and stems >= 0");

            migrationBuilder.AddCheckConstraint(
                name: "ck_work_records_hours",
                table: "work_records",
                sql: "person_hours > 0");
        }
    }
}
