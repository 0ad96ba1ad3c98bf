using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class CheckInsAndIncidents : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterColumn<Guid>(
                name: "recipient_id",
                table: "messages",
                type: "uuid",
                nullable: true,
                oldClrType: typeof(Guid),
                oldType: "uuid");

            migrationBuilder.CreateTable(
                name: "crew_watches",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    task_id = table.Column<Guid>(type: "uuid", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    people_on_site = table.Column<int>(type: "integer", nullable: false),
                    interval_minutes = table.Column<int>(type: "integer", nullable: false),
                    grace_minutes = table.Column<int>(type: "integer", nullable: false),
                    escalation_minutes = table.Column<int>(type: "integer", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    started_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    started_by = table.Column<string>(type: "text", nullable: false),
                    due_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    link_key = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_crew_watches", x => x.id);
                    table.CheckConstraint("ck_crew_watches_minutes", "interval_minutes > 0 and grace_minutes >= 0 and escalation_minutes > 0");
                    table.CheckConstraint("ck_crew_watches_people", "people_on_site > 0");
                    table.ForeignKey(
                        name: "fk_crew_watches_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_crew_watches_people_started_by_id",
                        column: x => x.started_by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_crew_watches_planned_tasks_task_id",
                        column: x => x.task_id,
                        principalTable: "planned_tasks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "incidents",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    task_id = table.Column<Guid>(type: "uuid", nullable: false),
                    corrects_id = table.Column<Guid>(type: "uuid", nullable: true),
                    kind = table.Column<string>(type: "text", nullable: false),
                    happened_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    what_happened = table.Column<string>(type: "text", nullable: false),
                    who_was_told = table.Column<string>(type: "text", nullable: false),
                    conditions = table.Column<string>(type: "jsonb", nullable: false),
                    decision_hash = table.Column<string>(type: "text", nullable: true),
                    recorded_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    recorded_by = table.Column<string>(type: "text", nullable: false),
                    recorded_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_incidents", x => x.id);
                    table.CheckConstraint("ck_incidents_what_happened", "what_happened <> ''");
                    table.ForeignKey(
                        name: "fk_incidents_incidents_corrects_id",
                        column: x => x.corrects_id,
                        principalTable: "incidents",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_incidents_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_incidents_people_recorded_by_id",
                        column: x => x.recorded_by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_incidents_planned_tasks_task_id",
                        column: x => x.task_id,
                        principalTable: "planned_tasks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "check_ins",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    watch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_check_ins", x => x.id);
                    table.ForeignKey(
                        name: "fk_check_ins_crew_watches_watch_id",
                        column: x => x.watch_id,
                        principalTable: "crew_watches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_check_ins_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_check_ins_people_by_id",
                        column: x => x.by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "missed_check_ins",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    watch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    due_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    raised_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    next_call_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    acknowledged_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    acknowledged_by = table.Column<string>(type: "text", nullable: true),
                    cleared_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_missed_check_ins", x => x.id);
                    table.CheckConstraint("ck_missed_check_ins_acknowledged", "(acknowledged_at is null) = (acknowledged_by is null)");
                    table.ForeignKey(
                        name: "fk_missed_check_ins_crew_watches_watch_id",
                        column: x => x.watch_id,
                        principalTable: "crew_watches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_missed_check_ins_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "watch_contacts",
                columns: table => new
                {
                    watch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    name = table.Column<string>(type: "text", nullable: false),
                    address = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_watch_contacts", x => new { x.watch_id, x.place });
                    table.ForeignKey(
                        name: "fk_watch_contacts_crew_watches_watch_id",
                        column: x => x.watch_id,
                        principalTable: "crew_watches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_watch_contacts_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_watch_contacts_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "alarm_calls",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    missed_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    written_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_alarm_calls", x => x.id);
                    table.ForeignKey(
                        name: "fk_alarm_calls_missed_check_ins_missed_id",
                        column: x => x.missed_id,
                        principalTable: "missed_check_ins",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_alarm_calls_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_alarm_calls_missed_id_number",
                table: "alarm_calls",
                columns: new[] { "missed_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_alarm_calls_organization_id",
                table: "alarm_calls",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_check_ins_by_id",
                table: "check_ins",
                column: "by_id");

            migrationBuilder.CreateIndex(
                name: "ix_check_ins_organization_id",
                table: "check_ins",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_check_ins_watch_id_number",
                table: "check_ins",
                columns: new[] { "watch_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_crew_watches_open",
                table: "crew_watches",
                column: "task_id",
                unique: true,
                filter: "ended_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_crew_watches_organization_id_task_id_started_at",
                table: "crew_watches",
                columns: new[] { "organization_id", "task_id", "started_at" });

            migrationBuilder.CreateIndex(
                name: "ix_crew_watches_started_by_id",
                table: "crew_watches",
                column: "started_by_id");

            migrationBuilder.CreateIndex(
                name: "ix_incidents_corrects_id",
                table: "incidents",
                column: "corrects_id");

            migrationBuilder.CreateIndex(
                name: "ix_incidents_organization_id_happened_at",
                table: "incidents",
                columns: new[] { "organization_id", "happened_at" });

            migrationBuilder.CreateIndex(
                name: "ix_incidents_recorded_by_id",
                table: "incidents",
                column: "recorded_by_id");

            migrationBuilder.CreateIndex(
                name: "ix_incidents_task_id",
                table: "incidents",
                column: "task_id");

            migrationBuilder.CreateIndex(
                name: "ix_missed_check_ins_escalating",
                table: "missed_check_ins",
                column: "watch_id",
                unique: true,
                filter: "acknowledged_at is null and cleared_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_missed_check_ins_organization_id",
                table: "missed_check_ins",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_watch_contacts_organization_id",
                table: "watch_contacts",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_watch_contacts_person_id",
                table: "watch_contacts",
                column: "person_id");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "alarm_calls");

            migrationBuilder.DropTable(
                name: "check_ins");

            migrationBuilder.DropTable(
                name: "incidents");

            migrationBuilder.DropTable(
                name: "watch_contacts");

            migrationBuilder.DropTable(
                name: "missed_check_ins");

            migrationBuilder.DropTable(
                name: "crew_watches");

            migrationBuilder.AlterColumn<Guid>(
                name: "recipient_id",
                table: "messages",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"),
                oldClrType: typeof(Guid),
                oldType: "uuid",
                oldNullable: true);
        }
    }
}
