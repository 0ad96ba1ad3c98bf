using System;
using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class DueLooks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "due_looks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    noted_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    is_whole = table.Column<bool>(type: "boolean", nullable: false),
                    records = table.Column<List<Guid>>(type: "uuid[]", nullable: false),
                    outlooks = table.Column<List<Guid>>(type: "uuid[]", nullable: false),
                    parcels = table.Column<List<Guid>>(type: "uuid[]", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_due_looks", x => x.id);
                    table.ForeignKey(
                        name: "fk_due_looks_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_due_looks_organization_id",
                table: "due_looks",
                column: "organization_id");

            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "due_looks");
        }
    }
}
