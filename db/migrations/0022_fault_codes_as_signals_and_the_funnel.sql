ALTER TABLE "found_signals" DROP CONSTRAINT "found_signals_known_kind";--> statement-breakpoint
ALTER TABLE "signal_runs" ADD COLUMN "funnel" jsonb;--> statement-breakpoint
ALTER TABLE "found_signals" ADD CONSTRAINT "found_signals_known_kind" CHECK ("found_signals"."word_kind" in ('component', 'fault_code', 'symptom'));