CREATE TABLE "missing_lists" (
	"missing_key" bigint PRIMARY KEY NOT NULL,
	"missing" jsonb NOT NULL
);
--> statement-breakpoint
ALTER TABLE "unclaimed_work" ADD COLUMN "missing_key" bigint;