using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class RulesOfOrganizations : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "audit_entries",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    by = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    row_id = table.Column<Guid>(type: "uuid", nullable: false),
                    before = table.Column<string>(type: "jsonb", nullable: true),
                    after = table.Column<string>(type: "jsonb", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_audit_entries", x => x.id);
                    table.ForeignKey(
                        name: "fk_audit_entries_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_audit_entries_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "organization_packs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    pack_id = table.Column<string>(type: "text", nullable: false),
                    property_id = table.Column<Guid>(type: "uuid", nullable: true),
                    version = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<string>(type: "text", nullable: false),
                    changed_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    changed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_organization_packs", x => x.id);
                    table.ForeignKey(
                        name: "fk_organization_packs_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_organization_packs_people_changed_by_id",
                        column: x => x.changed_by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_organization_packs_properties_property_id",
                        column: x => x.property_id,
                        principalTable: "properties",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "rule_overrides",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    property_id = table.Column<Guid>(type: "uuid", nullable: false),
                    parcel_id = table.Column<Guid>(type: "uuid", nullable: true),
                    task_id = table.Column<Guid>(type: "uuid", nullable: true),
                    rule_id = table.Column<string>(type: "text", nullable: false),
                    first_day = table.Column<LocalDate>(type: "date", nullable: false),
                    last_day = table.Column<LocalDate>(type: "date", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    made_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    withdrawn_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    withdrawn_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_rule_overrides", x => x.id);
                    table.CheckConstraint("ck_rule_overrides_days", "first_day <= last_day and last_day - first_day < 366");
                    table.CheckConstraint("ck_rule_overrides_reason", "reason <> ''");
                    table.CheckConstraint("ck_rule_overrides_withdrawn", "(withdrawn_at is null) = (withdrawn_by_id is null)");
                    table.ForeignKey(
                        name: "fk_rule_overrides_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_rule_overrides_parcels_parcel_id",
                        column: x => x.parcel_id,
                        principalTable: "parcels",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_rule_overrides_people_withdrawn_by_id",
                        column: x => x.withdrawn_by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_rule_overrides_person_made_by_id",
                        column: x => x.made_by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_rule_overrides_planned_tasks_task_id",
                        column: x => x.task_id,
                        principalTable: "planned_tasks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_rule_overrides_properties_property_id",
                        column: x => x.property_id,
                        principalTable: "properties",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "site_readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    property_id = table.Column<Guid>(type: "uuid", nullable: false),
                    signal = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<double>(type: "double precision", nullable: false),
                    given = table.Column<string>(type: "text", nullable: false),
                    seen_on = table.Column<LocalDate>(type: "date", nullable: false),
                    until = table.Column<LocalDate>(type: "date", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    recorded_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    recorded_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_site_readings", x => x.id);
                    table.CheckConstraint("ck_site_readings_days", "until >= seen_on and until - seen_on <= 14");
                    table.ForeignKey(
                        name: "fk_site_readings_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_site_readings_person_recorded_by_id",
                        column: x => x.recorded_by_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_site_readings_properties_property_id",
                        column: x => x.property_id,
                        principalTable: "properties",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_audit_entries_organization_id_at",
                table: "audit_entries",
                columns: new[] { "organization_id", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_audit_entries_person_id",
                table: "audit_entries",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_organization_packs_changed_by_id",
                table: "organization_packs",
                column: "changed_by_id");

            migrationBuilder.CreateIndex(
                name: "ix_organization_packs_organization_id_pack_id",
                table: "organization_packs",
                columns: new[] { "organization_id", "pack_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_organization_packs_property_id",
                table: "organization_packs",
                column: "property_id");

            migrationBuilder.CreateIndex(
                name: "ix_rule_overrides_made_by_id",
                table: "rule_overrides",
                column: "made_by_id");

            migrationBuilder.CreateIndex(
                name: "ix_rule_overrides_organization_id_property_id_last_day",
                table: "rule_overrides",
                columns: new[] { "organization_id", "property_id", "last_day" });

            migrationBuilder.CreateIndex(
                name: "ix_rule_overrides_parcel_id",
                table: "rule_overrides",
                column: "parcel_id");

            migrationBuilder.CreateIndex(
                name: "ix_rule_overrides_property_id",
                table: "rule_overrides",
                column: "property_id");

            migrationBuilder.CreateIndex(
                name: "ix_rule_overrides_task_id",
                table: "rule_overrides",
                column: "task_id");

            migrationBuilder.CreateIndex(
                name: "ix_rule_overrides_withdrawn_by_id",
                table: "rule_overrides",
                column: "withdrawn_by_id");

            migrationBuilder.CreateIndex(
                name: "ix_site_readings_organization_id_property_id_until",
                table: "site_readings",
                columns: new[] { "organization_id", "property_id", "until" });

            migrationBuilder.CreateIndex(
                name: "ix_site_readings_property_id",
                table: "site_readings",
                column: "property_id");

            migrationBuilder.CreateIndex(
                name: "ix_site_readings_recorded_by_id",
                table: "site_readings",
                column: "recorded_by_id");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "audit_entries");

            migrationBuilder.DropTable(
                name: "organization_packs");

            migrationBuilder.DropTable(
                name: "rule_overrides");

            migrationBuilder.DropTable(
                name: "site_readings");
        }
    }
}
