CREATE TABLE "removed_attachments" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"attachment_id" bigint NOT NULL,
	"attachment" jsonb NOT NULL,
	"content" "bytea" NOT NULL,
	"removed_at" timestamp with time zone NOT NULL,
	"removed_by" text NOT NULL,
	CONSTRAINT "removed_attachments_unit_id_job_id_attachment_id_pk" PRIMARY KEY("unit_id","job_id","attachment_id"),
	CONSTRAINT "removed_attachments_by_somebody" CHECK (btrim("removed_attachments"."removed_by") <> '')
);
--> statement-breakpoint
CREATE INDEX "removed_attachments_by_time" ON "removed_attachments" USING btree ("removed_at");