using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class ChecklistSignaturesAndEmergencyNumbers : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "hospital",
                table: "properties",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "nearest_address",
                table: "properties",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "poison_centre",
                table: "properties",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "sheriff",
                table: "properties",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "utility",
                table: "properties",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "begun_unreleased",
                table: "crew_watches",
                type: "text",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "checklist_signatures",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    task_id = table.Column<Guid>(type: "uuid", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    version = table.Column<string>(type: "text", nullable: false),
                    content = table.Column<string>(type: "jsonb", nullable: false),
                    key = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person = table.Column<string>(type: "text", nullable: false),
                    role = table.Column<string>(type: "text", nullable: false),
                    typed_name = table.Column<string>(type: "text", nullable: false),
                    signed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    received_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_checklist_signatures", x => x.id);
                    table.CheckConstraint("ck_checklist_signatures_typed_name", "typed_name <> ''");
                    table.CheckConstraint("ck_checklist_signatures_version", "version ~ '^[0-9a-f]{64}$'");
                    table.ForeignKey(
                        name: "fk_checklist_signatures_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_checklist_signatures_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_checklist_signatures_planned_tasks_task_id",
                        column: x => x.task_id,
                        principalTable: "planned_tasks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_checklist_signatures_organization_id_key",
                table: "checklist_signatures",
                columns: new[] { "organization_id", "key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_checklist_signatures_organization_id_task_id_day",
                table: "checklist_signatures",
                columns: new[] { "organization_id", "task_id", "day" });

            migrationBuilder.CreateIndex(
                name: "ix_checklist_signatures_person_id",
                table: "checklist_signatures",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_checklist_signatures_task_id",
                table: "checklist_signatures",
                column: "task_id");
            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "checklist_signatures");

            migrationBuilder.DropColumn(
                name: "hospital",
                table: "properties");

            migrationBuilder.DropColumn(
                name: "nearest_address",
                table: "properties");

            migrationBuilder.DropColumn(
                name: "poison_centre",
                table: "properties");

            migrationBuilder.DropColumn(
                name: "sheriff",
                table: "properties");

            migrationBuilder.DropColumn(
                name: "utility",
                table: "properties");

            migrationBuilder.DropColumn(
                name: "begun_unreleased",
                table: "crew_watches");
        }
    }
}
