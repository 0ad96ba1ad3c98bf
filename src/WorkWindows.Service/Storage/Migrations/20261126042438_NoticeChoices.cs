using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class NoticeChoices : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "channel",
                table: "messages",
                type: "text",
                nullable: false,
                defaultValue: "Mail");

            migrationBuilder.AddColumn<string>(
                name: "message_key",
                table: "announcements",
                type: "text",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "calendar_days",
                columns: table => new
                {
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    key = table.Column<string>(type: "text", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    first = table.Column<LocalDate>(type: "date", nullable: false),
                    last = table.Column<LocalDate>(type: "date", nullable: false),
                    from = table.Column<LocalTime>(type: "time", nullable: true),
                    until = table.Column<LocalTime>(type: "time", nullable: true),
                    time_zone = table.Column<string>(type: "text", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    place = table.Column<string>(type: "text", nullable: false),
                    is_cancelled = table.Column<bool>(type: "boolean", nullable: false),
                    sequence = table.Column<int>(type: "integer", nullable: false),
                    changed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_calendar_days", x => new { x.person_id, x.key });
                    table.CheckConstraint("ck_calendar_days_hours", "(\"from\" is null) = (until is null)");
                    table.CheckConstraint("ck_calendar_days_order", "first <= last");
                    table.ForeignKey(
                        name: "fk_calendar_days_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_calendar_days_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "notice_choices",
                columns: table => new
                {
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    channels = table.Column<int>(type: "integer", nullable: false),
                    chosen_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_notice_choices", x => new { x.person_id, x.kind });
                    table.ForeignKey(
                        name: "fk_notice_choices_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_notice_choices_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "notice_settings",
                columns: table => new
                {
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    time_zone = table.Column<string>(type: "text", nullable: true),
                    celsius = table.Column<bool>(type: "boolean", nullable: false),
                    quiet_from = table.Column<LocalTime>(type: "time", nullable: true),
                    quiet_until = table.Column<LocalTime>(type: "time", nullable: true),
                    webhook_address = table.Column<string>(type: "text", nullable: true),
                    webhook_secret = table.Column<string>(type: "text", nullable: true),
                    calendar_key = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_notice_settings", x => x.person_id);
                    table.CheckConstraint("ck_notice_settings_quiet", "(quiet_from is null) = (quiet_until is null) and quiet_from <> quiet_until");
                    table.CheckConstraint("ck_notice_settings_webhook", "(webhook_address is null) = (webhook_secret is null)");
                    table.ForeignKey(
                        name: "fk_notice_settings_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_notice_settings_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "person_certificates",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    title = table.Column<string>(type: "text", nullable: false),
                    valid_until = table.Column<LocalDate>(type: "date", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_certificates", x => x.id);
                    table.ForeignKey(
                        name: "fk_person_certificates_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_person_certificates_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "season_ends",
                columns: table => new
                {
                    task_id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    last_day = table.Column<LocalDate>(type: "date", nullable: false),
                    told_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_season_ends", x => new { x.task_id, x.person_id });
                    table.ForeignKey(
                        name: "fk_season_ends_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_season_ends_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_season_ends_planned_tasks_task_id",
                        column: x => x.task_id,
                        principalTable: "planned_tasks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "told_topics",
                columns: table => new
                {
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    topic = table.Column<string>(type: "text", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    told_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_told_topics", x => new { x.person_id, x.topic });
                    table.ForeignKey(
                        name: "fk_told_topics_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_told_topics_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_calendar_days_organization_id",
                table: "calendar_days",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_notice_choices_organization_id",
                table: "notice_choices",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_notice_settings_calendar_key",
                table: "notice_settings",
                column: "calendar_key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_notice_settings_organization_id",
                table: "notice_settings",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_person_certificates_organization_id",
                table: "person_certificates",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_person_certificates_person_id_title",
                table: "person_certificates",
                columns: new[] { "person_id", "title" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_season_ends_organization_id",
                table: "season_ends",
                column: "organization_id");

            migrationBuilder.CreateIndex(
                name: "ix_season_ends_person_id",
                table: "season_ends",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_told_topics_organization_id",
                table: "told_topics",
                column: "organization_id");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "calendar_days");

            migrationBuilder.DropTable(
                name: "notice_choices");

            migrationBuilder.DropTable(
                name: "notice_settings");

            migrationBuilder.DropTable(
                name: "person_certificates");

            migrationBuilder.DropTable(
                name: "season_ends");

            migrationBuilder.DropTable(
                name: "told_topics");

            migrationBuilder.DropColumn(
                name: "channel",
                table: "messages");

            migrationBuilder.DropColumn(
                name: "message_key",
                table: "announcements");
        }
    }
}
