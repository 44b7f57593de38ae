CREATE TABLE "payer_wordings" (
	"payer" text NOT NULL,
	"words" text NOT NULL,
	"reason" text NOT NULL,
	"set_by" text NOT NULL,
	"set_at" timestamp with time zone NOT NULL,
	CONSTRAINT "payer_wordings_payer_words_pk" PRIMARY KEY("payer","words"),
	CONSTRAINT "payer_wordings_said_by_somebody" CHECK (btrim("payer_wordings"."words") <> '' and btrim("payer_wordings"."set_by") <> '')
);
--> statement-breakpoint
CREATE TABLE "remittance_lines" (
	"remittance_id" integer NOT NULL,
	"row" integer NOT NULL,
	"cells" jsonb NOT NULL,
	"fate" text NOT NULL,
	"paid_cents" bigint,
	"currency" varchar(3),
	"payer_text" text NOT NULL,
	"reason" text,
	"match" jsonb,
	"shares" jsonb,
	"sentence" text NOT NULL,
	"decided_by" text,
	CONSTRAINT "remittance_lines_remittance_id_row_pk" PRIMARY KEY("remittance_id","row"),
	CONSTRAINT "remittance_lines_known_fate" CHECK ("remittance_lines"."fate" in ('ready', 'asked', 'tray', 'unreadable', 'posted', 'set aside', 'undone')),
	CONSTRAINT "remittance_lines_go_somewhere" CHECK ("remittance_lines"."fate" not in ('ready', 'asked', 'posted', 'undone') or ("remittance_lines"."shares" is not null and "remittance_lines"."paid_cents" is not null)),
	CONSTRAINT "remittance_lines_set_aside_by" CHECK ("remittance_lines"."fate" <> 'set aside' or "remittance_lines"."decided_by" is not null)
);
--> statement-breakpoint
CREATE TABLE "remittance_postings" (
	"remittance_id" integer NOT NULL,
	"row" integer NOT NULL,
	"unit_id" bigint NOT NULL,
	"claim_id" bigint NOT NULL,
	"event" integer NOT NULL,
	CONSTRAINT "remittance_postings_remittance_id_row_unit_id_claim_id_pk" PRIMARY KEY("remittance_id","row","unit_id","claim_id")
);
--> statement-breakpoint
CREATE TABLE "remittances" (
	"remittance_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "remittances_remittance_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"file_name" text NOT NULL,
	"file_sha256" varchar(64) NOT NULL,
	"content" "bytea" NOT NULL,
	"payer" text NOT NULL,
	"reference" text NOT NULL,
	"paid_on" date NOT NULL,
	"currency" varchar(3) NOT NULL,
	"form" jsonb NOT NULL,
	"header" jsonb NOT NULL,
	"columns" jsonb NOT NULL,
	"columns_confirmed_by" text,
	"received_at" timestamp with time zone NOT NULL,
	"received_by" text NOT NULL,
	"undone_at" timestamp with time zone,
	"undone_by" text,
	"version" integer NOT NULL,
	CONSTRAINT "remittances_hashed" CHECK (encode(sha256("remittances"."content"), 'hex') = "remittances"."file_sha256"),
	CONSTRAINT "remittances_named" CHECK (btrim("remittances"."payer") <> '' and btrim("remittances"."reference") <> '' and btrim("remittances"."received_by") <> ''),
	CONSTRAINT "remittances_undone_by_somebody" CHECK (("remittances"."undone_at" is null) = ("remittances"."undone_by" is null)),
	CONSTRAINT "remittances_version_counts_from_one" CHECK ("remittances"."version" >= 1)
);
--> statement-breakpoint
CREATE TABLE "unclaimed_work" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"policy_id" integer NOT NULL,
	"leak" text NOT NULL,
	"claim_number" text,
	"payer" text NOT NULL,
	"component" text,
	"completed_on" date NOT NULL,
	"due_on" date,
	"currency" varchar(3) NOT NULL,
	"parts_cents" bigint NOT NULL,
	"labour_cents" bigint NOT NULL,
	"trip_cents" bigint NOT NULL,
	"diagnosis_cents" bigint NOT NULL,
	"handling_cents" bigint NOT NULL,
	"amount_cents" bigint NOT NULL,
	"missing" jsonb NOT NULL,
	"reason" text NOT NULL,
	CONSTRAINT "unclaimed_work_unit_id_job_id_policy_id_leak_pk" PRIMARY KEY("unit_id","job_id","policy_id","leak"),
	CONSTRAINT "unclaimed_work_known_leak" CHECK ("unclaimed_work"."leak" in ('never filed', 'parts only', 'campaign', 'not corrected', 'short-paid', 'part credit', 'charged back', 'repeat absorbed')),
	CONSTRAINT "unclaimed_work_adds_up" CHECK ("unclaimed_work"."amount_cents" = "unclaimed_work"."parts_cents" + "unclaimed_work"."labour_cents" + "unclaimed_work"."trip_cents" + "unclaimed_work"."diagnosis_cents" + "unclaimed_work"."handling_cents"),
	CONSTRAINT "unclaimed_work_not_negative" CHECK (least("unclaimed_work"."parts_cents", "unclaimed_work"."labour_cents", "unclaimed_work"."trip_cents", "unclaimed_work"."diagnosis_cents", "unclaimed_work"."handling_cents") >= 0),
	CONSTRAINT "unclaimed_work_has_reason" CHECK (btrim("unclaimed_work"."reason") <> '')
);
--> statement-breakpoint
CREATE TABLE "units_to_judge" (
	"unit_id" bigint NOT NULL,
	CONSTRAINT "units_to_judge_unit_id_pk" PRIMARY KEY("unit_id")
);
--> statement-breakpoint
ALTER TABLE "remittance_lines" ADD CONSTRAINT "remittance_lines_remittance_id_remittances_remittance_id_fk" FOREIGN KEY ("remittance_id") REFERENCES "public"."remittances"("remittance_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "remittance_postings" ADD CONSTRAINT "remittance_postings_of_a_line" FOREIGN KEY ("remittance_id","row") REFERENCES "public"."remittance_lines"("remittance_id","row") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "remittance_postings" ADD CONSTRAINT "remittance_postings_are_events" FOREIGN KEY ("unit_id","claim_id","event") REFERENCES "public"."claim_events"("unit_id","claim_id","event") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "remittance_lines_by_fate" ON "remittance_lines" USING btree ("fate");--> statement-breakpoint
CREATE INDEX "remittance_postings_by_claim" ON "remittance_postings" USING btree ("unit_id","claim_id");--> statement-breakpoint
CREATE UNIQUE INDEX "remittances_one_file_once" ON "remittances" USING btree ("file_sha256") WHERE undone_at is null;--> statement-breakpoint
CREATE INDEX "unclaimed_work_by_leak" ON "unclaimed_work" USING btree ("leak","due_on");