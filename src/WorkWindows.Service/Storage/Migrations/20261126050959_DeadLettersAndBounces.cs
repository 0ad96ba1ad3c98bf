using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace WorkWindows.Service.Storage.Migrations
{
    /// <inheritdoc />
    public partial class DeadLettersAndBounces : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_messages_organization_id_next_attempt_at",
                table: "messages");

            migrationBuilder.AddColumn<string>(
                name: "given_up",
                table: "messages",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<short>(
                name: "urgency",
                table: "messages",
                type: "smallint",
                nullable: false,
                computedColumnSql: "case kind when 'check-in-missed' then 0 when 'crew-fine' then 1 when 'stop-work' then 2 when 'unreachable' then 2 else 3 end",
                stored: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "link_key",
                table: "organizations",
                type: "bytea",
                nullable: false,
                defaultValueSql: "decode(replace(gen_random_uuid()::text || gen_random_uuid()::text, '-', ''), 'hex')");

            migrationBuilder.CreateTable(
                name: "bouncing_addresses",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    organization_id = table.Column<Guid>(type: "uuid", nullable: false, defaultValueSql: "current_setting('workwindows.organization')::uuid"),
                    address = table.Column<string>(type: "text", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    bounced_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_bouncing_addresses", x => x.id);
                    table.ForeignKey(
                        name: "fk_bouncing_addresses_organizations_organization_id",
                        column: x => x.organization_id,
                        principalTable: "organizations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_messages_message_id",
                table: "messages",
                column: "message_id");

            migrationBuilder.CreateIndex(
                name: "ix_messages_organization_id_created_at",
                table: "messages",
                columns: new[] { "organization_id", "created_at" });

            migrationBuilder.CreateIndex(
                name: "ix_messages_outbox",
                table: "messages",
                columns: new[] { "organization_id", "urgency", "next_attempt_at", "created_at" },
                filter: "sent_at is null and dead_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_bouncing_addresses_organization_id_address",
                table: "bouncing_addresses",
                columns: new[] { "organization_id", "address" },
                unique: true);

            // The owner of the tables is bound by row-level security too, until it is enforced again below.
            migrationBuilder.Sql("""
                alter table organizations alter link_key drop default;
                alter table messages no force row level security;
                update messages
                set given_up = case when last_error like 'superseded%' then 'Superseded' else 'Failed' end
                where dead_at is not null;
                """);
            migrationBuilder.IsolateTenants();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "bouncing_addresses");

            migrationBuilder.DropIndex(
                name: "ix_messages_message_id",
                table: "messages");

            migrationBuilder.DropIndex(
                name: "ix_messages_organization_id_created_at",
                table: "messages");

            migrationBuilder.DropIndex(
                name: "ix_messages_outbox",
                table: "messages");

            migrationBuilder.DropColumn(
                name: "link_key",
                table: "organizations");

            migrationBuilder.DropColumn(
                name: "urgency",
                table: "messages");

            migrationBuilder.DropColumn(
                name: "given_up",
                table: "messages");

            migrationBuilder.CreateIndex(
                name: "ix_messages_organization_id_next_attempt_at",
                table: "messages",
                columns: new[] { "organization_id", "next_attempt_at" },
                filter: "sent_at is null and dead_at is null");
        }
    }
}
