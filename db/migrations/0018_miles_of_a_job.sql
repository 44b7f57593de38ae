ALTER TABLE "jobs" ADD COLUMN "trip_miles" integer;--> statement-breakpoint
ALTER TABLE "jobs" ADD CONSTRAINT "jobs_miles_not_negative" CHECK ("jobs"."trip_miles" >= 0);