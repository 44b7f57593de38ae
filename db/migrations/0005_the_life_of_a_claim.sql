CREATE TABLE "claim_submissions" (
	"unit_id" bigint NOT NULL,
	"claim_id" bigint NOT NULL,
	"submission" integer NOT NULL,
	"sent_on" date NOT NULL,
	"way" text NOT NULL,
	"reference" text NOT NULL,
	"content" "bytea" NOT NULL,
	"content_sha256" varchar(64) NOT NULL,
	"manifest" jsonb NOT NULL,
	"overrides" jsonb NOT NULL,
	"at" timestamp with time zone NOT NULL,
	CONSTRAINT "claim_submissions_unit_id_claim_id_submission_pk" PRIMARY KEY("unit_id","claim_id","submission"),
	CONSTRAINT "claim_submissions_with_hash" UNIQUE("unit_id","claim_id","submission","content_sha256"),
	CONSTRAINT "claim_submissions_count_from_one" CHECK ("claim_submissions"."submission" >= 1),
	CONSTRAINT "claim_submissions_hashed" CHECK (encode(sha256("claim_submissions"."content"), 'hex') = "claim_submissions"."content_sha256"),
	CONSTRAINT "claim_submissions_known_way" CHECK ("claim_submissions"."way" in ('portal', 'email', 'post', 'other'))
);
--> statement-breakpoint
ALTER TABLE "claims" DROP CONSTRAINT "claims_amount_not_negative";--> statement-breakpoint
ALTER TABLE "claims" DROP CONSTRAINT "claims_known_state";--> statement-breakpoint
ALTER TABLE "claim_events" ADD COLUMN "by" text;--> statement-breakpoint
ALTER TABLE "claim_events" ADD COLUMN "act" jsonb;--> statement-breakpoint
-- Events so far tell of drafts only, and nobody was asked who built them.
UPDATE "claim_events" SET "what" = 'built', "act" = '{"what": "built"}', "by" = 'the shop';--> statement-breakpoint
ALTER TABLE "claim_events" ALTER COLUMN "by" SET NOT NULL;--> statement-breakpoint
ALTER TABLE "claim_events" ALTER COLUMN "act" SET NOT NULL;--> statement-breakpoint
ALTER TABLE "claim_events" ADD COLUMN "submission" integer;--> statement-breakpoint
ALTER TABLE "claim_events" ADD COLUMN "sent_sha256" varchar(64);--> statement-breakpoint
ALTER TABLE "claim_lines" ADD COLUMN "approved_cents" bigint;--> statement-breakpoint
ALTER TABLE "claim_lines" ADD COLUMN "paid_cents" bigint DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE "claim_lines" ADD COLUMN "clawed_back_cents" bigint DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "approved_cents" bigint;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "paid_cents" bigint DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "clawed_back_cents" bigint DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "open_cents" bigint DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "submission" integer;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "first_sent_on" date;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "last_sent_on" date;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "answered_on" date;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "paid_on" date;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "payer_reference" text;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "resubmit_by" date;--> statement-breakpoint
ALTER TABLE "claims" ADD COLUMN "keep_part_until" date;--> statement-breakpoint
ALTER TABLE "claim_submissions" ADD CONSTRAINT "claim_submissions_of_a_claim" FOREIGN KEY ("unit_id","claim_id") REFERENCES "public"."claims"("unit_id","claim_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
-- Claims and submissions point at each other. Looked at when a change is committed, so that both can be written or moved in one.
ALTER TABLE "claims" ADD CONSTRAINT "claims_latest_submission" FOREIGN KEY ("unit_id","claim_id","submission") REFERENCES "public"."claim_submissions"("unit_id","claim_id","submission") DEFERRABLE INITIALLY DEFERRED;--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_about_a_submission" FOREIGN KEY ("unit_id","claim_id","submission") REFERENCES "public"."claim_submissions"("unit_id","claim_id","submission") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_hold_the_hash" FOREIGN KEY ("unit_id","claim_id","submission","sent_sha256") REFERENCES "public"."claim_submissions"("unit_id","claim_id","submission","content_sha256") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "claim_lines_by_invoice" ON "claim_lines" USING btree ("invoice_number","invoice_line");--> statement-breakpoint
CREATE INDEX "claims_by_number" ON "claims" USING btree ("claim_number");--> statement-breakpoint
CREATE INDEX "claims_by_state" ON "claims" USING btree ("state");--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_send_once" UNIQUE("unit_id","claim_id","sent_sha256");--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_first_is_built" CHECK (("claim_events"."event" = 1) = ("claim_events"."what" = 'built') and "claim_events"."event" >= 1);--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_act_agrees" CHECK ("claim_events"."act" ->> 'what' is not distinct from "claim_events"."what");--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_sent_before_what_follows" CHECK (("claim_events"."what" in ('built', 'withdrawn')) = ("claim_events"."submission" is null));--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_sending_has_hash" CHECK (("claim_events"."what" = 'sent') = ("claim_events"."sent_sha256" is not null) and ("claim_events"."what" <> 'sent' or "claim_events"."act" ->> 'sha256' is not distinct from "claim_events"."sent_sha256"));--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_payment_has_reference" CHECK ("claim_events"."what" not in ('paid', 'clawed back') or btrim(coalesce("claim_events"."act" ->> 'reference', '')) <> '');--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_reason_where_due" CHECK ("claim_events"."what" not in ('withdrawn', 'written off') or btrim(coalesce("claim_events"."act" ->> 'reason', '')) <> '');--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_by_somebody" CHECK (btrim("claim_events"."by") <> '');--> statement-breakpoint
ALTER TABLE "claim_lines" ADD CONSTRAINT "claim_lines_approved_within_asked" CHECK ("claim_lines"."approved_cents" between 0 and "claim_lines"."claimed_cents");--> statement-breakpoint
ALTER TABLE "claim_lines" ADD CONSTRAINT "claim_lines_taken_back_within_paid" CHECK ("claim_lines"."clawed_back_cents" between 0 and "claim_lines"."paid_cents");--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_sent_has_submission" CHECK (("claims"."state" in ('draft', 'withdrawn')) = ("claims"."submission" is null) and ("claims"."submission" is null) = ("claims"."first_sent_on" is null));--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_sent_before_what_follows" CHECK ("claims"."first_sent_on" <= "claims"."last_sent_on" and "claims"."first_sent_on" <= coalesce("claims"."answered_on", "claims"."first_sent_on") and "claims"."first_sent_on" <= coalesce("claims"."paid_on", "claims"."first_sent_on"));--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_answer_after_sending" CHECK ("claims"."submission" is not null or ("claims"."approved_cents" is null and "claims"."answered_on" is null and "claims"."paid_on" is null and "claims"."paid_cents" = 0));--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_money_has_its_day" CHECK ("claims"."paid_cents" = 0 or "claims"."paid_on" is not null);--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_approved_within_asked" CHECK ("claims"."approved_cents" <= "claims"."claimed_cents");--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_taken_back_within_paid" CHECK ("claims"."clawed_back_cents" between 0 and "claims"."paid_cents");--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_open_within_asked" CHECK ("claims"."open_cents" <= "claims"."claimed_cents");--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_waits_for_correction" CHECK ("claims"."resubmit_by" is null or "claims"."state" in ('needs correction', 'rejected'));--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_amount_not_negative" CHECK ("claims"."claimed_cents" >= 0 and "claims"."approved_cents" >= 0 and "claims"."paid_cents" >= 0 and "claims"."open_cents" >= 0);--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_known_state" CHECK ("claims"."state" in ('draft', 'withdrawn', 'sent', 'received', 'approved', 'needs correction', 'rejected', 'appealed', 'short-paid', 'paid', 'written off', 'in audit', 'clawed back'));