CREATE TABLE "suggested_callbacks" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"model_id" integer NOT NULL,
	"callback_of" text NOT NULL,
	"days" integer NOT NULL,
	CONSTRAINT "suggested_callbacks_unit_id_job_id_pk" PRIMARY KEY("unit_id","job_id"),
	CONSTRAINT "suggested_callbacks_later" CHECK ("suggested_callbacks"."days" >= 0)
);
--> statement-breakpoint
CREATE TABLE "contracts" (
	"unit_id" bigint NOT NULL,
	"contract_number" text NOT NULL,
	"policy" text NOT NULL,
	"sold_on" date NOT NULL,
	"cancelled_on" date,
	"batch_id" bigint,
	CONSTRAINT "contracts_unit_id_contract_number_pk" PRIMARY KEY("unit_id","contract_number"),
	CONSTRAINT "contracts_cancelled_after_sale" CHECK ("contracts"."sold_on" <= "contracts"."cancelled_on")
);
--> statement-breakpoint
CREATE TABLE "file_draft_pieces" (
	"draft_id" uuid NOT NULL,
	"place" integer NOT NULL,
	"content" "bytea" NOT NULL,
	CONSTRAINT "file_draft_pieces_draft_id_place_pk" PRIMARY KEY("draft_id","place")
);
--> statement-breakpoint
CREATE TABLE "file_drafts" (
	"draft_id" uuid PRIMARY KEY NOT NULL,
	"file_name" text NOT NULL,
	"file_bytes" bigint NOT NULL,
	"file_sha256" varchar(64) NOT NULL,
	"step" text NOT NULL,
	"form" jsonb,
	"matching" jsonb,
	"look" jsonb,
	"created_at" timestamp with time zone NOT NULL,
	"updated_at" timestamp with time zone NOT NULL,
	CONSTRAINT "file_drafts_known_step" CHECK ("file_drafts"."step" in ('look', 'match', 'check')),
	CONSTRAINT "file_drafts_hashed" CHECK ("file_drafts"."file_sha256" ~ '^[0-9a-f]{64}$')
);
--> statement-breakpoint
CREATE TABLE "remembered_matchings" (
	"fingerprint" varchar(64) PRIMARY KEY NOT NULL,
	"kind" text NOT NULL,
	"headers" text[] NOT NULL,
	"form" jsonb NOT NULL,
	"matching" jsonb NOT NULL,
	"used_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "remembered_words" (
	"column" text NOT NULL,
	"word" text NOT NULL,
	"meaning" text NOT NULL,
	"used_at" timestamp with time zone NOT NULL,
	CONSTRAINT "remembered_words_column_word_pk" PRIMARY KEY("column","word")
);
--> statement-breakpoint
CREATE TABLE "edit_differences" (
	"batch_id" bigint NOT NULL,
	"row" integer NOT NULL,
	"edit_id" bigint NOT NULL,
	"file_value" jsonb,
	CONSTRAINT "edit_differences_batch_id_row_edit_id_pk" PRIMARY KEY("batch_id","row","edit_id")
);
--> statement-breakpoint
CREATE TABLE "hand_edits" (
	"edit_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "hand_edits_edit_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"table_name" text NOT NULL,
	"key" text NOT NULL,
	"column_name" text NOT NULL,
	"value_before" jsonb,
	"value" jsonb,
	"at" timestamp with time zone NOT NULL,
	"by" text NOT NULL,
	"reason" text NOT NULL,
	"lifted_at" timestamp with time zone
);
--> statement-breakpoint
CREATE TABLE "job_joins" (
	"join_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "job_joins_join_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"job_id" bigint NOT NULL,
	"from_unit_id" bigint NOT NULL,
	"to_unit_id" bigint NOT NULL,
	"batch_id" bigint,
	"by" text,
	"reason" text,
	"at" timestamp with time zone NOT NULL,
	CONSTRAINT "job_joins_by_batch_or_hand" CHECK (("job_joins"."batch_id" is null) = ("job_joins"."by" is not null)),
	CONSTRAINT "job_joins_move" CHECK ("job_joins"."from_unit_id" <> "job_joins"."to_unit_id")
);
--> statement-breakpoint
CREATE TABLE "batch_made" (
	"batch_id" bigint NOT NULL,
	"table_name" text NOT NULL,
	"part" integer NOT NULL,
	"first" bigint[] NOT NULL,
	"second" bigint[],
	"third" bigint[],
	CONSTRAINT "batch_made_batch_id_table_name_part_pk" PRIMARY KEY("batch_id","table_name","part")
);
--> statement-breakpoint
CREATE TABLE "cell_notes" (
	"batch_id" bigint NOT NULL,
	"row" integer NOT NULL,
	"place" integer NOT NULL,
	"source" text NOT NULL,
	"column" text NOT NULL,
	"raw" text NOT NULL,
	"taken" text NOT NULL,
	"note" text NOT NULL,
	"job_id" bigint,
	"unit_id" bigint,
	CONSTRAINT "cell_notes_batch_id_row_place_pk" PRIMARY KEY("batch_id","row","place")
);
--> statement-breakpoint
CREATE TABLE "part_prices" (
	"part_id" bigint NOT NULL,
	"priced_on" date NOT NULL,
	"distributor" text NOT NULL,
	"cost_cents" bigint NOT NULL,
	"currency" varchar(3) NOT NULL,
	"batch_id" bigint,
	CONSTRAINT "part_prices_part_id_priced_on_distributor_pk" PRIMARY KEY("part_id","priced_on","distributor"),
	CONSTRAINT "part_prices_not_negative" CHECK ("part_prices"."cost_cents" >= 0)
);
--> statement-breakpoint
CREATE TABLE "parts" (
	"part_id" bigint PRIMARY KEY NOT NULL,
	"maker" text NOT NULL,
	"part_number" text NOT NULL,
	"normalised" text NOT NULL,
	"description" text NOT NULL,
	"component" varchar(60),
	"superseded_by" text,
	"batch_id" bigint,
	CONSTRAINT "parts_superseded_by_another" CHECK ("parts"."superseded_by" <> "parts"."part_number")
);
--> statement-breakpoint
CREATE TABLE "api_keys" (
	"key_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "api_keys_key_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"name" text NOT NULL,
	"scope" text NOT NULL,
	"key_sha256" varchar(64) NOT NULL,
	"created_at" timestamp with time zone NOT NULL,
	"last_used_at" timestamp with time zone,
	"revoked_at" timestamp with time zone,
	CONSTRAINT "api_keys_one_hash" UNIQUE("key_sha256"),
	CONSTRAINT "api_keys_known_scope" CHECK ("api_keys"."scope" in ('jobs')),
	CONSTRAINT "api_keys_hashed" CHECK ("api_keys"."key_sha256" ~ '^[0-9a-f]{64}$')
);
--> statement-breakpoint
CREATE TABLE "idempotency_keys" (
	"route" text NOT NULL,
	"key" text NOT NULL,
	"request_sha256" varchar(64) NOT NULL,
	"state" text NOT NULL,
	"run" uuid NOT NULL,
	"run_until" timestamp with time zone NOT NULL,
	"status" integer,
	"answer" jsonb,
	"expires_at" timestamp with time zone NOT NULL,
	CONSTRAINT "idempotency_keys_route_key_pk" PRIMARY KEY("route","key"),
	CONSTRAINT "idempotency_keys_known_state" CHECK ("idempotency_keys"."state" in ('running', 'done')),
	CONSTRAINT "idempotency_keys_done_has_answer" CHECK (("idempotency_keys"."state" = 'done') = ("idempotency_keys"."status" is not null and "idempotency_keys"."answer" is not null))
);
--> statement-breakpoint
ALTER TABLE "batches" DROP CONSTRAINT "batches_rows_add_up";--> statement-breakpoint
ALTER TABLE "batches" ADD COLUMN "rows_refused" integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE "batches" ADD COLUMN "form" jsonb;--> statement-breakpoint
ALTER TABLE "batches" ADD COLUMN "matching" jsonb;--> statement-breakpoint
ALTER TABLE "batches" ADD COLUMN "parent_batch" bigint;--> statement-breakpoint
ALTER TABLE "held_rows" ADD COLUMN "source" jsonb;--> statement-breakpoint
ALTER TABLE "held_rows" ADD COLUMN "state" text DEFAULT 'held' NOT NULL;--> statement-breakpoint
ALTER TABLE "held_rows" ADD COLUMN "reason" text;--> statement-breakpoint
ALTER TABLE "held_rows" ADD COLUMN "mended_by" bigint;--> statement-breakpoint
ALTER TABLE "shop" ADD COLUMN "repeat_days" integer DEFAULT 30 NOT NULL;--> statement-breakpoint
ALTER TABLE "suggested_callbacks" ADD CONSTRAINT "suggested_callbacks_model_id_models_model_id_fk" FOREIGN KEY ("model_id") REFERENCES "public"."models"("model_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "contracts" ADD CONSTRAINT "contracts_unit_id_units_unit_id_fk" FOREIGN KEY ("unit_id") REFERENCES "public"."units"("unit_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "file_draft_pieces" ADD CONSTRAINT "file_draft_pieces_draft_id_file_drafts_draft_id_fk" FOREIGN KEY ("draft_id") REFERENCES "public"."file_drafts"("draft_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "edit_differences" ADD CONSTRAINT "edit_differences_batch_id_batches_batch_id_fk" FOREIGN KEY ("batch_id") REFERENCES "public"."batches"("batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "edit_differences" ADD CONSTRAINT "edit_differences_of_an_edit" FOREIGN KEY ("edit_id") REFERENCES "public"."hand_edits"("edit_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "job_joins" ADD CONSTRAINT "job_joins_batch_id_batches_batch_id_fk" FOREIGN KEY ("batch_id") REFERENCES "public"."batches"("batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "batch_made" ADD CONSTRAINT "batch_made_batch_id_batches_batch_id_fk" FOREIGN KEY ("batch_id") REFERENCES "public"."batches"("batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "cell_notes" ADD CONSTRAINT "cell_notes_batch_id_batches_batch_id_fk" FOREIGN KEY ("batch_id") REFERENCES "public"."batches"("batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "part_prices" ADD CONSTRAINT "part_prices_of_a_part" FOREIGN KEY ("part_id") REFERENCES "public"."parts"("part_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "parts" ADD CONSTRAINT "parts_component_components_key_fk" FOREIGN KEY ("component") REFERENCES "public"."components"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "suggested_callbacks_by_model" ON "suggested_callbacks" USING btree ("model_id");--> statement-breakpoint
CREATE INDEX "contracts_by_number" ON "contracts" USING btree ("contract_number");--> statement-breakpoint
CREATE INDEX "file_drafts_by_update" ON "file_drafts" USING btree ("updated_at");--> statement-breakpoint
CREATE INDEX "edit_differences_by_edit" ON "edit_differences" USING btree ("edit_id");--> statement-breakpoint
CREATE UNIQUE INDEX "hand_edits_one_holds_a_field" ON "hand_edits" USING btree ("table_name","key","column_name") WHERE lifted_at is null;--> statement-breakpoint
CREATE INDEX "hand_edits_by_row" ON "hand_edits" USING btree ("table_name","key");--> statement-breakpoint
CREATE INDEX "job_joins_by_job" ON "job_joins" USING btree ("job_id");--> statement-breakpoint
CREATE UNIQUE INDEX "job_joins_once_a_batch" ON "job_joins" USING btree ("job_id","batch_id");--> statement-breakpoint
CREATE INDEX "cell_notes_by_job" ON "cell_notes" USING btree ("job_id");--> statement-breakpoint
CREATE INDEX "cell_notes_by_unit" ON "cell_notes" USING btree ("unit_id");--> statement-breakpoint
CREATE INDEX "parts_by_number" ON "parts" USING btree ("normalised");--> statement-breakpoint
CREATE INDEX "idempotency_keys_by_expiry" ON "idempotency_keys" USING btree ("expires_at");--> statement-breakpoint
ALTER TABLE "batches" ADD CONSTRAINT "batches_mend_a_batch" FOREIGN KEY ("parent_batch") REFERENCES "public"."batches"("batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "held_rows" ADD CONSTRAINT "held_rows_mended_by_batches_batch_id_fk" FOREIGN KEY ("mended_by") REFERENCES "public"."batches"("batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "batches_by_parent" ON "batches" USING btree ("parent_batch");--> statement-breakpoint
CREATE INDEX "held_rows_by_mending" ON "held_rows" USING btree ("mended_by");--> statement-breakpoint
ALTER TABLE "batches" ADD CONSTRAINT "batches_rows_add_up" CHECK ("batches"."rows_total" = "batches"."rows_new" + "batches"."rows_changed" + "batches"."rows_same" + "batches"."rows_held" + "batches"."rows_refused");--> statement-breakpoint
ALTER TABLE "held_rows" ADD CONSTRAINT "held_rows_known_state" CHECK ("held_rows"."state" in ('held', 'refused', 'mended', 'left_out'));--> statement-breakpoint
ALTER TABLE "held_rows" ADD CONSTRAINT "held_rows_reason_where_due" CHECK (("held_rows"."state" in ('refused', 'left_out')) = ("held_rows"."reason" is not null));--> statement-breakpoint
ALTER TABLE "held_rows" ADD CONSTRAINT "held_rows_mended_by_a_batch" CHECK (("held_rows"."state" = 'mended') = ("held_rows"."mended_by" is not null));--> statement-breakpoint
ALTER TABLE "shop" ADD CONSTRAINT "shop_repeat_days_not_negative" CHECK ("shop"."repeat_days" >= 0);--> statement-breakpoint
ALTER TABLE "batch_made" ALTER COLUMN "first" SET STORAGE EXTERNAL, ALTER COLUMN "second" SET STORAGE EXTERNAL, ALTER COLUMN "third" SET STORAGE EXTERNAL;
