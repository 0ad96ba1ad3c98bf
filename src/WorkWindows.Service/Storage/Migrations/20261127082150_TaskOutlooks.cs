using System;
using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class TaskOutlooks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "task_outlooks",
                columns: table => new
                {
                    task_id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    seen_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    first_day = table.Column<LocalDate>(type: "date", nullable: false),
                    states = table.Column<string>(type: "text", nullable: false),
                    why = table.Column<List<string>>(type: "text[]", nullable: false),
                    last_day = table.Column<LocalDate>(type: "date", nullable: true),
                    closed_by = table.Column<string>(type: "text", nullable: true),
                    before_first_day = table.Column<LocalDate>(type: "date", nullable: true),
                    before_states = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_task_outlooks", x => x.task_id);
                    table.ForeignKey(
                        name: "fk_task_outlooks_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_task_outlooks_planned_tasks_task_id",
                        column: x => x.task_id,
                        principalTable: "planned_tasks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_task_outlooks_organization_id",
                table: "task_outlooks",
                column: "organization_id");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "task_outlooks");
        }
    }
}
