ALTER TABLE "jobs" DROP CONSTRAINT "jobs_one_number_a_unit";--> statement-breakpoint
ALTER TABLE "units" DROP CONSTRAINT "units_one_serial_a_maker";--> statement-breakpoint
DROP INDEX "jobs_by_number";--> statement-breakpoint
ALTER TABLE "jobs" ADD CONSTRAINT "jobs_one_number_a_unit" UNIQUE("job_number","unit_id");