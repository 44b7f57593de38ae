DROP INDEX "job_joins_once_a_batch";--> statement-breakpoint
ALTER TABLE "job_joins" ADD COLUMN "undone_at" timestamp with time zone;--> statement-breakpoint
ALTER TABLE "held_rows" ADD COLUMN "corrections" jsonb DEFAULT '{}'::jsonb NOT NULL;--> statement-breakpoint
CREATE UNIQUE INDEX "job_joins_once_a_batch" ON "job_joins" USING btree ("job_id","batch_id") WHERE undone_at is null;