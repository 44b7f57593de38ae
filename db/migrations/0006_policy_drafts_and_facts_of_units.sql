CREATE TABLE "policy_drafts" (
	"draft_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "policy_drafts_draft_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"based_on" integer,
	"document" jsonb NOT NULL,
	"saved_at" timestamp with time zone NOT NULL,
	"saved_by" text NOT NULL,
	"revision" integer NOT NULL,
	CONSTRAINT "policy_drafts_revision_counts_from_one" CHECK ("policy_drafts"."revision" >= 1)
);
--> statement-breakpoint
CREATE TABLE "repair_spans" (
	"unit_id" bigint NOT NULL,
	"from_on" date NOT NULL,
	"until_on" date NOT NULL,
	"source" text NOT NULL,
	"entered_by" text NOT NULL,
	"entered_at" timestamp with time zone NOT NULL,
	CONSTRAINT "repair_spans_unit_id_from_on_pk" PRIMARY KEY("unit_id","from_on"),
	CONSTRAINT "repair_spans_in_order" CHECK ("repair_spans"."from_on" <= "repair_spans"."until_on"),
	CONSTRAINT "repair_spans_has_source" CHECK (btrim("repair_spans"."source") <> '' and btrim("repair_spans"."entered_by") <> '')
);
--> statement-breakpoint
CREATE TABLE "unit_facts" (
	"unit_id" bigint NOT NULL,
	"first_used_on" date,
	"acquired_on" date,
	"transfer_registered_on" date,
	"exchanged_on" date,
	"exchanged_serial" text,
	"serial_removed" boolean DEFAULT false NOT NULL,
	CONSTRAINT "unit_facts_unit_id_pk" PRIMARY KEY("unit_id"),
	CONSTRAINT "unit_facts_transfer_in_order" CHECK ("unit_facts"."acquired_on" <= "unit_facts"."transfer_registered_on"),
	CONSTRAINT "unit_facts_exchange_has_day" CHECK ("unit_facts"."exchanged_serial" is null or ("unit_facts"."exchanged_on" is not null and btrim("unit_facts"."exchanged_serial") <> ''))
);
--> statement-breakpoint
ALTER TABLE "policies" ADD COLUMN "published_by" text;--> statement-breakpoint
ALTER TABLE "policies" ADD COLUMN "closed_on" date;--> statement-breakpoint
ALTER TABLE "policies" ADD COLUMN "retired_at" timestamp with time zone;--> statement-breakpoint
ALTER TABLE "policies" ADD COLUMN "retired_by" text;--> statement-breakpoint
ALTER TABLE "policies" ADD COLUMN "retired_reason" text;--> statement-breakpoint
ALTER TABLE "policy_drafts" ADD CONSTRAINT "policy_drafts_based_on_policies_policy_id_fk" FOREIGN KEY ("based_on") REFERENCES "public"."policies"("policy_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "repair_spans" ADD CONSTRAINT "repair_spans_unit_id_units_unit_id_fk" FOREIGN KEY ("unit_id") REFERENCES "public"."units"("unit_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "unit_facts" ADD CONSTRAINT "unit_facts_unit_id_units_unit_id_fk" FOREIGN KEY ("unit_id") REFERENCES "public"."units"("unit_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "policies" ADD CONSTRAINT "policies_closed_in_order" CHECK ("policies"."effective_from" <= "policies"."closed_on");--> statement-breakpoint
ALTER TABLE "policies" ADD CONSTRAINT "policies_retired_by_somebody" CHECK (("policies"."retired_at" is null) = ("policies"."retired_by" is null) and ("policies"."retired_at" is null) = ("policies"."retired_reason" is null) and btrim("policies"."retired_by") <> '' and btrim("policies"."retired_reason") <> '');