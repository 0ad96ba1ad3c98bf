using System;
using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class CrewsAndWork : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "follows_id",
                table: "planned_tasks",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "hours_high",
                table: "planned_tasks",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "hours_low",
                table: "planned_tasks",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "not_before",
                table: "planned_tasks",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "points",
                table: "planned_tasks",
                type: "numeric",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "crew_plans",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    proposed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    proposed_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    proposed_by = table.Column<string>(type: "text", nullable: false),
                    first_day = table.Column<LocalDate>(type: "date", nullable: false),
                    last_day = table.Column<LocalDate>(type: "date", nullable: false),
                    status = table.Column<string>(type: "text", nullable: false),
                    decided_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    decided_by = table.Column<string>(type: "text", nullable: true),
                    content = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_crew_plans", x => x.id);
                    table.ForeignKey(
                        name: "fk_crew_plans_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_crew_plans_people_proposed_by_id",
                        column: x => x.proposed_by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "crews",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    name = table.Column<string>(type: "text", nullable: false),
                    lead_id = table.Column<Guid>(type: "uuid", nullable: false),
                    hours_per_day = table.Column<decimal>(type: "numeric", nullable: false),
                    base_latitude = table.Column<double>(type: "double precision", nullable: true),
                    base_longitude = table.Column<double>(type: "double precision", nullable: true),
                    first_day = table.Column<LocalDate>(type: "date", nullable: true),
                    last_day = table.Column<LocalDate>(type: "date", nullable: true),
                    calendar_key = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_crews", x => x.id);
                    table.CheckConstraint("ck_crews_base", "(base_latitude is null) = (base_longitude is null)");
                    table.CheckConstraint("ck_crews_days", "first_day <= last_day");
                    table.CheckConstraint("ck_crews_hours", "hours_per_day > 0 and hours_per_day <= 24");
                    table.ForeignKey(
                        name: "fk_crews_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_crews_person_lead_id",
                        column: x => x.lead_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "drive_times",
                columns: table => new
                {
                    from_id = table.Column<Guid>(type: "uuid", nullable: false),
                    to_id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    minutes = table.Column<double>(type: "double precision", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drive_times", x => new { x.from_id, x.to_id });
                    table.CheckConstraint("ck_drive_times_minutes", "minutes >= 0 and minutes <= 1440");
                    table.ForeignKey(
                        name: "fk_drive_times_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "planning_settings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    points_per_travel_hour = table.Column<double>(type: "double precision", nullable: false),
                    points_per_change = table.Column<double>(type: "double precision", nullable: false),
                    road_factor = table.Column<double>(type: "double precision", nullable: false),
                    road_speed_km_per_hour = table.Column<double>(type: "double precision", nullable: false),
                    spacing_ft = table.Column<double>(type: "double precision", nullable: false),
                    hinge_limits = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_planning_settings", x => x.id);
                    table.ForeignKey(
                        name: "fk_planning_settings_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "practice_settings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    practice_id = table.Column<string>(type: "text", nullable: false),
                    points_per_unit = table.Column<decimal>(type: "numeric", nullable: true),
                    certificates = table.Column<List<string>>(type: "text[]", nullable: false),
                    equipment_kinds = table.Column<List<string>>(type: "text[]", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_practice_settings", x => x.id);
                    table.CheckConstraint("ck_practice_settings_points", "points_per_unit >= 0");
                    table.ForeignKey(
                        name: "fk_practice_settings_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "bookings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    task_id = table.Column<Guid>(type: "uuid", nullable: false),
                    crew_id = table.Column<Guid>(type: "uuid", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    hours = table.Column<decimal>(type: "numeric", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    is_fixed = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_bookings", x => x.id);
                    table.UniqueConstraint("ak_bookings_id_crew_id_day", x => new { x.id, x.crew_id, x.day });
                    table.CheckConstraint("ck_bookings_hours", "hours > 0 and hours <= 24");
                    table.ForeignKey(
                        name: "fk_bookings_crews_crew_id",
                        column: x => x.crew_id,
                        principalTable: "crews",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_bookings_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_bookings_planned_tasks_task_id",
                        column: x => x.task_id,
                        principalTable: "planned_tasks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "crew_members",
                columns: table => new
                {
                    crew_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_crew_members", x => new { x.crew_id, x.person_id });
                    table.ForeignKey(
                        name: "fk_crew_members_crews_crew_id",
                        column: x => x.crew_id,
                        principalTable: "crews",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_crew_members_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_crew_members_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "equipment",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    name = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    crew_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_equipment", x => x.id);
                    table.ForeignKey(
                        name: "fk_equipment_crews_crew_id",
                        column: x => x.crew_id,
                        principalTable: "crews",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_equipment_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "work_records",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    task_id = table.Column<Guid>(type: "uuid", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    crew_id = table.Column<Guid>(type: "uuid", nullable: true),
                    people = table.Column<int>(type: "integer", nullable: false),
                    person_hours = table.Column<decimal>(type: "numeric", nullable: false),
                    quantity = table.Column<decimal>(type: "numeric", nullable: true),
                    stems = table.Column<int>(type: "integer", nullable: true),
                    problem = table.Column<string>(type: "text", nullable: true),
                    is_last = table.Column<bool>(type: "boolean", nullable: false),
                    recorded_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    recorded_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    recorded_by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_work_records", x => x.id);
                    table.CheckConstraint("ck_work_records_amounts", "quantity >= 0 and stems >= 0");
                    table.CheckConstraint("ck_work_records_hours", "person_hours > 0");
                    table.CheckConstraint("ck_work_records_people", "people > 0");
                    table.ForeignKey(
                        name: "fk_work_records_crews_crew_id",
                        column: x => x.crew_id,
                        principalTable: "crews",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_work_records_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_work_records_people_recorded_by_id",
                        column: x => x.recorded_by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_work_records_planned_tasks_task_id",
                        column: x => x.task_id,
                        principalTable: "planned_tasks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "booked_people",
                columns: table => new
                {
                    booking_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    crew_id = table.Column<Guid>(type: "uuid", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_booked_people", x => new { x.booking_id, x.person_id });
                    table.ForeignKey(
                        name: "fk_booked_people_bookings_booking_id_crew_id_day",
                        columns: x => new { x.booking_id, x.crew_id, x.day },
                        principalTable: "bookings",
                        principalColumns: new[] { "id", "crew_id", "day" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_booked_people_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_booked_people_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "absences",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    crew_id = table.Column<Guid>(type: "uuid", nullable: true),
                    equipment_id = table.Column<Guid>(type: "uuid", nullable: true),
                    first_day = table.Column<LocalDate>(type: "date", nullable: false),
                    last_day = table.Column<LocalDate>(type: "date", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_absences", x => x.id);
                    table.CheckConstraint("ck_absences_days", "first_day <= last_day");
                    table.CheckConstraint("ck_absences_one", "num_nonnulls(person_id, crew_id, equipment_id) = 1");
                    table.ForeignKey(
                        name: "fk_absences_crews_crew_id",
                        column: x => x.crew_id,
                        principalTable: "crews",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_absences_equipment_equipment_id",
                        column: x => x.equipment_id,
                        principalTable: "equipment",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_absences_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_absences_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "booked_equipment",
                columns: table => new
                {
                    booking_id = table.Column<Guid>(type: "uuid", nullable: false),
                    equipment_id = table.Column<Guid>(type: "uuid", nullable: false),
                    crew_id = table.Column<Guid>(type: "uuid", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_booked_equipment", x => new { x.booking_id, x.equipment_id });
                    table.ForeignKey(
                        name: "fk_booked_equipment_bookings_booking_id_crew_id_day",
                        columns: x => new { x.booking_id, x.crew_id, x.day },
                        principalTable: "bookings",
                        principalColumns: new[] { "id", "crew_id", "day" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_booked_equipment_equipment_equipment_id",
                        column: x => x.equipment_id,
                        principalTable: "equipment",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_booked_equipment_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "work_photos",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    record_id = table.Column<Guid>(type: "uuid", nullable: false),
                    content_type = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_work_photos", x => x.id);
                    table.ForeignKey(
                        name: "fk_work_photos_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_work_photos_work_records_record_id",
                        column: x => x.record_id,
                        principalTable: "work_records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_planned_tasks_follows_id",
                table: "planned_tasks",
                column: "follows_id");

            migrationBuilder.AddCheckConstraint(
                name: "ck_planned_tasks_follows",
                table: "planned_tasks",
                sql: "follows_id <> id");

            migrationBuilder.AddCheckConstraint(
                name: "ck_planned_tasks_hours",
                table: "planned_tasks",
                sql: "(hours_low is null) = (hours_high is null) and hours_low > 0 and hours_low <= hours_high");

            migrationBuilder.AddCheckConstraint(
                name: "ck_planned_tasks_points",
                table: "planned_tasks",
                sql: "points >= 0");

            migrationBuilder.CreateIndex(
                name: "ix_absences_crew_id",
                table: "absences",
                column: "crew_id");

            migrationBuilder.CreateIndex(
                name: "ix_absences_equipment_id",
                table: "absences",
                column: "equipment_id");

            migrationBuilder.CreateIndex(
                name: "ix_absences_organization_id_last_day",
                table: "absences",
                columns: new[] { "organization_id", "last_day" });

            migrationBuilder.CreateIndex(
                name: "ix_absences_person_id",
                table: "absences",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_booked_equipment_booking_id_crew_id_day",
                table: "booked_equipment",
                columns: new[] { "booking_id", "crew_id", "day" });

            migrationBuilder.CreateIndex(
                name: "ix_booked_equipment_equipment_id",
                table: "booked_equipment",
                column: "equipment_id");

            migrationBuilder.CreateIndex(
                name: "ix_booked_equipment_organization_id",
                table: "booked_equipment",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_booked_people_booking_id_crew_id_day",
                table: "booked_people",
                columns: new[] { "booking_id", "crew_id", "day" });

            migrationBuilder.CreateIndex(
                name: "ix_booked_people_organization_id",
                table: "booked_people",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_booked_people_person_id",
                table: "booked_people",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_bookings_crew_id",
                table: "bookings",
                column: "crew_id");

            migrationBuilder.CreateIndex(
                name: "ix_bookings_organization_id_day",
                table: "bookings",
                columns: new[] { "organization_id", "day" });

            migrationBuilder.CreateIndex(
                name: "ix_bookings_task_id_day",
                table: "bookings",
                columns: new[] { "task_id", "day" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_crew_members_organization_id",
                table: "crew_members",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_crew_members_person_id",
                table: "crew_members",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_crew_plans_organization_id_proposed_at",
                table: "crew_plans",
                columns: new[] { "organization_id", "proposed_at" });

            migrationBuilder.CreateIndex(
                name: "ix_crew_plans_proposed_by_id",
                table: "crew_plans",
                column: "proposed_by_id");

            migrationBuilder.CreateIndex(
                name: "ix_crews_lead_id",
                table: "crews",
                column: "lead_id");

            migrationBuilder.CreateIndex(
                name: "ix_crews_organization_id_name",
                table: "crews",
                columns: new[] { "organization_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_drive_times_organization_id",
                table: "drive_times",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_equipment_crew_id",
                table: "equipment",
                column: "crew_id");

            migrationBuilder.CreateIndex(
                name: "ix_equipment_organization_id_name",
                table: "equipment",
                columns: new[] { "organization_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_planning_settings_organization_id",
                table: "planning_settings",
                column: "organization_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_practice_settings_organization_id_practice_id",
                table: "practice_settings",
                columns: new[] { "organization_id", "practice_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_work_photos_organization_id",
                table: "work_photos",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_work_photos_record_id",
                table: "work_photos",
                column: "record_id");

            migrationBuilder.CreateIndex(
                name: "ix_work_records_crew_id",
                table: "work_records",
                column: "crew_id");

            migrationBuilder.CreateIndex(
                name: "ix_work_records_organization_id_task_id_day",
                table: "work_records",
                columns: new[] { "organization_id", "task_id", "day" });

            migrationBuilder.CreateIndex(
                name: "ix_work_records_recorded_by_id",
                table: "work_records",
                column: "recorded_by_id");

            migrationBuilder.CreateIndex(
                name: "ix_work_records_task_id",
                table: "work_records",
                column: "task_id");

            migrationBuilder.AddForeignKey(
                name: "fk_planned_tasks_planned_tasks_follows_id",
                table: "planned_tasks",
                column: "follows_id",
                principalTable: "planned_tasks",
                principalColumn: "id",
                onDelete: ReferentialAction.SetNull);

            // The last line against two crews with one person or one machine on a day. References between rows of
            // organizations include the organization.
            migrationBuilder.Sql("""
                create extension if not exists btree_gist;
                create unique index ix_bookings_organization_id_id_crew_id_day
                  on bookings (organization_id, id, crew_id, day);
                alter table booked_people drop constraint fk_booked_people_bookings_booking_id_crew_id_day,
                  add constraint fk_booked_people_bookings_booking_id_crew_id_day
                    foreign key (organization_id, booking_id, crew_id, day)
                    references bookings (organization_id, id, crew_id, day) on delete cascade,
                  add constraint ex_booked_people_one_crew_a_day exclude using gist
                    (organization_id with =, person_id with =, day with =, crew_id with <>);
                alter table booked_equipment drop constraint fk_booked_equipment_bookings_booking_id_crew_id_day,
                  add constraint fk_booked_equipment_bookings_booking_id_crew_id_day
                    foreign key (organization_id, booking_id, crew_id, day)
                    references bookings (organization_id, id, crew_id, day) on delete cascade,
                  add constraint ex_booked_equipment_one_crew_a_day exclude using gist
                    (organization_id with =, equipment_id with =, day with =, crew_id with <>);
                """);
            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_planned_tasks_planned_tasks_follows_id",
                table: "planned_tasks");

            migrationBuilder.DropTable(
                name: "absences");

            migrationBuilder.DropTable(
                name: "booked_equipment");

            migrationBuilder.DropTable(
                name: "booked_people");

            migrationBuilder.DropTable(
                name: "crew_members");

            migrationBuilder.DropTable(
                name: "crew_plans");

            migrationBuilder.DropTable(
                name: "drive_times");

            migrationBuilder.DropTable(
                name: "planning_settings");

            migrationBuilder.DropTable(
                name: "practice_settings");

            migrationBuilder.DropTable(
                name: "work_photos");

            migrationBuilder.DropTable(
                name: "equipment");

            migrationBuilder.DropTable(
                name: "bookings");

            migrationBuilder.DropTable(
                name: "work_records");

            migrationBuilder.DropTable(
                name: "crews");

            migrationBuilder.DropIndex(
                name: "ix_planned_tasks_follows_id",
                table: "planned_tasks");

            migrationBuilder.DropCheckConstraint(
                name: "ck_planned_tasks_follows",
                table: "planned_tasks");

            migrationBuilder.DropCheckConstraint(
                name: "ck_planned_tasks_hours",
                table: "planned_tasks");

            migrationBuilder.DropCheckConstraint(
                name: "ck_planned_tasks_points",
                table: "planned_tasks");

            migrationBuilder.DropColumn(
                name: "follows_id",
                table: "planned_tasks");

            migrationBuilder.DropColumn(
                name: "hours_high",
                table: "planned_tasks");

            migrationBuilder.DropColumn(
                name: "hours_low",
                table: "planned_tasks");

            migrationBuilder.DropColumn(
                name: "not_before",
                table: "planned_tasks");

            migrationBuilder.DropColumn(
                name: "points",
                table: "planned_tasks");
        }
    }
}
