CREATE TABLE "settled_quarter" (
	"only" boolean PRIMARY KEY DEFAULT true NOT NULL,
	"print" text NOT NULL,
	"settled_until" date NOT NULL,
	"content" "bytea" NOT NULL
);
--> statement-breakpoint
ALTER TABLE "unit_windows" DROP CONSTRAINT "unit_windows_one_row";--> statement-breakpoint
DELETE FROM "unit_windows";--> statement-breakpoint
ALTER TABLE "unit_windows" ADD COLUMN "made_half" integer;--> statement-breakpoint
ALTER TABLE "unit_windows" ADD COLUMN "which_units" bigint NOT NULL;--> statement-breakpoint
CREATE INDEX "readings_codes" ON "readings" USING btree ("unit_id","job_id","word") WHERE outcome = 'code';--> statement-breakpoint
ALTER TABLE "unit_windows" ADD CONSTRAINT "unit_windows_one_row" UNIQUE NULLS NOT DISTINCT("model_id","in_service_on","observed_from","retired_on","made_half");--> statement-breakpoint
-- Windows are counted anew, since what was there did not say which units they were and when made: the rules of refresh-counts.ts.
INSERT INTO "unit_windows" ("model_id", "made_half", "in_service_on", "observed_from", "retired_on", "units", "which_units")
SELECT u.model_id,
	CASE WHEN u.made_until - u.made_from <= 92 THEN 2 * (extract(year FROM u.made_from + (u.made_until - u.made_from) / 2)::int - 1970)
		+ CASE WHEN extract(month FROM u.made_from + (u.made_until - u.made_from) / 2) > 6 THEN 1 ELSE 0 END END,
	u.in_service_on, d.day, u.retired_on, count(*), sum(hashint8extended(u.unit_id, 0) >> 40)
FROM units u LEFT JOIN shop ON true
CROSS JOIN LATERAL (SELECT greatest(u.in_service_on, shop.records_from, u.recorded_from) AS day) d
WHERE u.in_register AND u.in_service_on IS NOT NULL AND (u.retired_on IS NULL OR u.retired_on >= d.day)
	AND (u.identified OR EXISTS (SELECT FROM jobs j WHERE j.unit_id = u.unit_id))
GROUP BY 1, 2, 3, 4, 5 ORDER BY 1, 3, 4, 5, 2;
