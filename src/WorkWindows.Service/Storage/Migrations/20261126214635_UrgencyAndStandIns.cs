using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class UrgencyAndStandIns : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "instead_because",
                table: "checklist_signatures",
                type: "text",
                nullable: true);

            migrationBuilder.AlterColumn<short>(
                name: "urgency",
                table: "messages",
                type: "smallint",
                nullable: false,
                computedColumnSql: "case kind when 'check-in-missed' then 0 when 'crew-fine' then 1 when 'taken-over' then 1 when 'stop-work' then 2 when 'unreachable' then 2 when 'do-not-start' then 3 else 4 end",
                stored: true,
                oldClrType: typeof(short),
                oldType: "smallint",
                oldComputedColumnSql: "case kind when 'check-in-missed' then 0 when 'crew-fine' then 1 when 'stop-work' then 2 when 'unreachable' then 2 else 3 end",
                oldStored: true);

            migrationBuilder.AddCheckConstraint(
                name: "ck_checklist_signatures_instead",
                table: "checklist_signatures",
                sql: "instead_because is null or (instead_because <> '' and role = 'Consultant')");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_checklist_signatures_instead",
                table: "checklist_signatures");

            migrationBuilder.DropColumn(
                name: "instead_because",
                table: "checklist_signatures");

            migrationBuilder.AlterColumn<short>(
                name: "urgency",
                table: "messages",
                type: "smallint",
                nullable: false,
                computedColumnSql: "case kind when 'check-in-missed' then 0 when 'crew-fine' then 1 when 'stop-work' then 2 when 'unreachable' then 2 else 3 end",
                stored: true,
                oldClrType: typeof(short),
                oldType: "smallint",
                oldComputedColumnSql: "case kind when 'check-in-missed' then 0 when 'crew-fine' then 1 when 'taken-over' then 1 when 'stop-work' then 2 when 'unreachable' then 2 when 'do-not-start' then 3 else 4 end",
                oldStored: true);
        }
    }
}
