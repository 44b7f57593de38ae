CREATE TABLE "restore_drills" (
	"drill_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "restore_drills_drill_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"backup_at" timestamp with time zone NOT NULL,
	"finished_at" timestamp with time zone NOT NULL,
	"rows" bigint NOT NULL,
	"problem" text,
	CONSTRAINT "restore_drills_after_backup" CHECK ("restore_drills"."finished_at" >= "restore_drills"."backup_at"),
	CONSTRAINT "restore_drills_rows" CHECK ("restore_drills"."rows" >= 0)
);
--> statement-breakpoint
CREATE INDEX "restore_drills_by_end" ON "restore_drills" USING btree ("finished_at");