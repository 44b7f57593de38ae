CREATE TABLE "part_fates" (
	"unit_id" bigint NOT NULL,
	"claim_id" bigint NOT NULL,
	"line" integer NOT NULL,
	"entry" integer NOT NULL,
	"fate" text NOT NULL,
	"on_day" date NOT NULL,
	"tag" text NOT NULL,
	"by" text NOT NULL,
	"reason" text NOT NULL,
	"at" timestamp with time zone NOT NULL,
	CONSTRAINT "part_fates_unit_id_claim_id_line_entry_pk" PRIMARY KEY("unit_id","claim_id","line","entry"),
	CONSTRAINT "part_fates_known_fate" CHECK ("part_fates"."fate" in ('sent back', 'scrapped', 'on shelf')),
	CONSTRAINT "part_fates_entered_by_somebody" CHECK (btrim("part_fates"."by") <> ''),
	CONSTRAINT "part_fates_count_from_one" CHECK ("part_fates"."entry" >= 1)
);
--> statement-breakpoint
ALTER TABLE "unit_facts" ADD COLUMN "batch_id" bigint;--> statement-breakpoint
ALTER TABLE "part_fates" ADD CONSTRAINT "part_fates_of_a_claim" FOREIGN KEY ("unit_id","claim_id") REFERENCES "public"."claims"("unit_id","claim_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
SELECT watch_changes('part_fates');
