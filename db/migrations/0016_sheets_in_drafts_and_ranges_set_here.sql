CREATE TABLE "own_ranges" (
	"range_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "own_ranges_range_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"model_id" integer NOT NULL,
	"check_key" varchar(60) NOT NULL,
	"condition" text DEFAULT '' NOT NULL,
	"low" double precision,
	"high" double precision,
	"unit" text NOT NULL,
	"source" text NOT NULL,
	"mark" text NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"by" text NOT NULL,
	"reason" text NOT NULL,
	"lifted_at" timestamp with time zone,
	"lifted_by" text,
	CONSTRAINT "own_ranges_not_empty" CHECK ("own_ranges"."low" is not null or "own_ranges"."high" is not null),
	CONSTRAINT "own_ranges_low_to_high" CHECK ("own_ranges"."low" <= "own_ranges"."high"),
	CONSTRAINT "own_ranges_say_why" CHECK (btrim("own_ranges"."source") <> '' and btrim("own_ranges"."by") <> '' and btrim("own_ranges"."reason") <> ''),
	CONSTRAINT "own_ranges_lifted_by" CHECK (("own_ranges"."lifted_at" is null) = ("own_ranges"."lifted_by" is null))
);
--> statement-breakpoint
CREATE TABLE "sheet_drafts" (
	"sheet_key" varchar(130) PRIMARY KEY NOT NULL,
	"edited_from" integer NOT NULL,
	"document" jsonb NOT NULL,
	"revision" integer NOT NULL,
	"saved_at" timestamp with time zone NOT NULL,
	"saved_by" text NOT NULL,
	CONSTRAINT "sheet_drafts_count_from_one" CHECK ("sheet_drafts"."revision" >= 1 and "sheet_drafts"."edited_from" >= 1)
);
--> statement-breakpoint
ALTER TABLE "readings" ADD COLUMN "own_check" jsonb;--> statement-breakpoint
ALTER TABLE "own_ranges" ADD CONSTRAINT "own_ranges_model_id_models_model_id_fk" FOREIGN KEY ("model_id") REFERENCES "public"."models"("model_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE UNIQUE INDEX "own_ranges_one_in_force" ON "own_ranges" USING btree ("model_id","check_key","condition") WHERE lifted_at is null;--> statement-breakpoint
SELECT watch_changes('own_ranges');
