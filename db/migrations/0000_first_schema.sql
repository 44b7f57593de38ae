CREATE TABLE "component_uses" (
	"component" varchar(60) NOT NULL,
	"product_type" varchar(60) NOT NULL,
	"batch_id" bigint,
	CONSTRAINT "component_uses_component_product_type_pk" PRIMARY KEY("component","product_type")
);
--> statement-breakpoint
CREATE TABLE "components" (
	"key" varchar(60) PRIMARY KEY NOT NULL,
	"name" text NOT NULL,
	"part_of" varchar(60),
	"batch_id" bigint
);
--> statement-breakpoint
CREATE TABLE "expected_ranges" (
	"model_id" integer NOT NULL,
	"check_key" varchar(60) NOT NULL,
	"low" double precision,
	"high" double precision,
	"unit" text NOT NULL,
	"condition" text DEFAULT '' NOT NULL,
	"source" text NOT NULL,
	"mark" text NOT NULL,
	"stated_on" date,
	"batch_id" bigint,
	CONSTRAINT "expected_ranges_model_id_check_key_condition_pk" PRIMARY KEY("model_id","check_key","condition"),
	CONSTRAINT "expected_ranges_not_empty" CHECK ("expected_ranges"."low" is not null or "expected_ranges"."high" is not null),
	CONSTRAINT "expected_ranges_low_to_high" CHECK ("expected_ranges"."low" <= "expected_ranges"."high")
);
--> statement-breakpoint
CREATE TABLE "makers" (
	"maker_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "makers_maker_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"name" text NOT NULL,
	"normalised" text NOT NULL,
	CONSTRAINT "makers_normalised_unique" UNIQUE("normalised")
);
--> statement-breakpoint
CREATE TABLE "models" (
	"model_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "models_model_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"maker_id" integer NOT NULL,
	"product_type" varchar(60) NOT NULL,
	"number" text NOT NULL,
	"normalised" text NOT NULL,
	CONSTRAINT "models_one_number_a_maker" UNIQUE("maker_id","normalised")
);
--> statement-breakpoint
CREATE TABLE "product_types" (
	"key" varchar(60) PRIMARY KEY NOT NULL,
	"name" text NOT NULL
);
--> statement-breakpoint
CREATE TABLE "symptom_uses" (
	"symptom" varchar(60) NOT NULL,
	"product_type" varchar(60) NOT NULL,
	CONSTRAINT "symptom_uses_symptom_product_type_pk" PRIMARY KEY("symptom","product_type")
);
--> statement-breakpoint
CREATE TABLE "symptoms" (
	"key" varchar(60) PRIMARY KEY NOT NULL,
	"name" text NOT NULL
);
--> statement-breakpoint
CREATE TABLE "claim_events" (
	"unit_id" bigint NOT NULL,
	"claim_id" bigint NOT NULL,
	"event" integer NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"what" text NOT NULL,
	"note" text NOT NULL,
	CONSTRAINT "claim_events_unit_id_claim_id_event_pk" PRIMARY KEY("unit_id","claim_id","event")
);
--> statement-breakpoint
CREATE TABLE "claim_lines" (
	"unit_id" bigint NOT NULL,
	"claim_id" bigint NOT NULL,
	"line" integer NOT NULL,
	"pay_item" text NOT NULL,
	"description" text NOT NULL,
	"quantity" integer NOT NULL,
	"claimed_cents" bigint NOT NULL,
	"basis" text NOT NULL,
	"part_number" text,
	"invoice_number" text,
	"invoice_line" text,
	CONSTRAINT "claim_lines_unit_id_claim_id_line_pk" PRIMARY KEY("unit_id","claim_id","line"),
	CONSTRAINT "claim_lines_known_item" CHECK ("claim_lines"."pay_item" in ('parts', 'labour', 'trip', 'diagnosis', 'handling')),
	CONSTRAINT "claim_lines_amount_not_negative" CHECK ("claim_lines"."claimed_cents" >= 0 and "claim_lines"."quantity" >= 1)
);
--> statement-breakpoint
CREATE TABLE "claims" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"claim_id" bigint NOT NULL,
	"claim_number" text NOT NULL,
	"policy_id" integer NOT NULL,
	"payer" text NOT NULL,
	"state" text NOT NULL,
	"currency" varchar(3) NOT NULL,
	"claimed_cents" bigint NOT NULL,
	"file_by" date,
	"decision" jsonb NOT NULL,
	"evidence" jsonb NOT NULL,
	"built_at" timestamp with time zone NOT NULL,
	"version" integer NOT NULL,
	CONSTRAINT "claims_unit_id_claim_id_pk" PRIMARY KEY("unit_id","claim_id"),
	CONSTRAINT "claims_numbered_once" UNIQUE("unit_id","claim_number"),
	CONSTRAINT "claims_amount_not_negative" CHECK ("claims"."claimed_cents" >= 0),
	CONSTRAINT "claims_known_state" CHECK ("claims"."state" in ('draft', 'withdrawn')),
	CONSTRAINT "claims_version_counts_from_one" CHECK ("claims"."version" >= 1)
);
--> statement-breakpoint
CREATE TABLE "job_cells" (
	"model_id" integer NOT NULL,
	"component" varchar(60),
	"symptom" varchar(60),
	"cause" varchar(60) NOT NULL,
	"counted_as" text NOT NULL,
	"in_service_on" date,
	"observed_from" date,
	"retired_on" date,
	"failed_on" date NOT NULL,
	"previous_failed_on" date,
	"jobs" integer NOT NULL,
	CONSTRAINT "job_cells_one_row" UNIQUE NULLS NOT DISTINCT("model_id","component","symptom","cause","in_service_on","observed_from","retired_on","failed_on","previous_failed_on"),
	CONSTRAINT "job_cells_some" CHECK ("job_cells"."jobs" > 0),
	CONSTRAINT "job_cells_known_count" CHECK ("job_cells"."counted_as" in ('failure', 'call'))
);
--> statement-breakpoint
CREATE TABLE "repeated_jobs" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"model_id" integer NOT NULL,
	"component" varchar(60),
	"symptom" varchar(60),
	"cause" varchar(60) NOT NULL,
	"counted_as" text NOT NULL,
	"in_service_on" date NOT NULL,
	"observed_from" date NOT NULL,
	"retired_on" date,
	"failed_on" date NOT NULL,
	CONSTRAINT "repeated_jobs_one_row" UNIQUE("unit_id","job_id")
);
--> statement-breakpoint
CREATE TABLE "unit_windows" (
	"model_id" integer NOT NULL,
	"in_service_on" date NOT NULL,
	"observed_from" date NOT NULL,
	"retired_on" date,
	"units" integer NOT NULL,
	CONSTRAINT "unit_windows_one_row" UNIQUE NULLS NOT DISTINCT("model_id","in_service_on","observed_from","retired_on"),
	CONSTRAINT "unit_windows_some" CHECK ("unit_windows"."units" > 0),
	CONSTRAINT "unit_windows_observed_in_service" CHECK ("unit_windows"."observed_from" >= "unit_windows"."in_service_on")
);
--> statement-breakpoint
CREATE TABLE "unplaced_units" (
	"model_id" integer NOT NULL,
	"reason" text NOT NULL,
	"units" integer NOT NULL,
	CONSTRAINT "unplaced_units_one_row" UNIQUE("model_id","reason"),
	CONSTRAINT "unplaced_units_some" CHECK ("unplaced_units"."units" > 0)
);
--> statement-breakpoint
CREATE TABLE "policies" (
	"policy_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "policies_policy_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"key" text NOT NULL,
	"maker_id" integer,
	"name" text NOT NULL,
	"version" integer NOT NULL,
	"effective_from" date NOT NULL,
	"effective_to" date,
	"document" jsonb NOT NULL,
	"document_sha256" varchar(64) NOT NULL,
	"source_document" text NOT NULL,
	"approved_by" text NOT NULL,
	"published_at" timestamp with time zone NOT NULL,
	"batch_id" bigint,
	CONSTRAINT "policies_one_version" UNIQUE("key","version"),
	CONSTRAINT "policies_dates_in_order" CHECK ("policies"."effective_from" <= "policies"."effective_to"),
	CONSTRAINT "policies_version_counts_from_one" CHECK ("policies"."version" >= 1)
);
--> statement-breakpoint
CREATE TABLE "batch_changes" (
	"batch_id" bigint NOT NULL,
	"table_name" text NOT NULL,
	"key" text NOT NULL,
	"what" text NOT NULL,
	"before" jsonb,
	CONSTRAINT "batch_changes_table_name_key_batch_id_pk" PRIMARY KEY("table_name","key","batch_id"),
	CONSTRAINT "batch_changes_known_what" CHECK ("batch_changes"."what" in ('made', 'changed', 'kept', 'used')),
	CONSTRAINT "batch_changes_changed_has_before" CHECK (("batch_changes"."what" = 'changed') = ("batch_changes"."before" is not null))
);
--> statement-breakpoint
CREATE TABLE "batches" (
	"batch_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "batches_batch_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"kind" text NOT NULL,
	"file_name" text NOT NULL,
	"file_sha256" varchar(64) NOT NULL,
	"file_bytes" bigint NOT NULL,
	"state" text NOT NULL,
	"rows_total" integer NOT NULL,
	"rows_new" integer NOT NULL,
	"rows_changed" integer NOT NULL,
	"rows_same" integer NOT NULL,
	"rows_held" integer NOT NULL,
	"added_at" timestamp with time zone NOT NULL,
	"taken_back_at" timestamp with time zone,
	CONSTRAINT "batches_rows_add_up" CHECK ("batches"."rows_total" = "batches"."rows_new" + "batches"."rows_changed" + "batches"."rows_same" + "batches"."rows_held"),
	CONSTRAINT "batches_known_state" CHECK ("batches"."state" in ('added', 'taken_back')),
	CONSTRAINT "batches_taken_back_has_time" CHECK (("batches"."state" = 'taken_back') = ("batches"."taken_back_at" is not null))
);
--> statement-breakpoint
CREATE TABLE "held_rows" (
	"batch_id" bigint NOT NULL,
	"row" integer NOT NULL,
	"cells" jsonb NOT NULL,
	"problems" jsonb NOT NULL,
	CONSTRAINT "held_rows_batch_id_row_pk" PRIMARY KEY("batch_id","row")
);
--> statement-breakpoint
CREATE TABLE "attachments" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"attachment_id" bigint NOT NULL,
	"subject" text NOT NULL,
	"caption" text NOT NULL,
	"media_type" text NOT NULL,
	"width" integer,
	"height" integer,
	"taken_at" timestamp with time zone,
	"received_sha256" varchar(64) NOT NULL,
	"stored_sha256" varchar(64) NOT NULL,
	"stored_bytes" integer NOT NULL,
	"content" "bytea" NOT NULL,
	"batch_id" bigint,
	CONSTRAINT "attachments_unit_id_job_id_attachment_id_pk" PRIMARY KEY("unit_id","job_id","attachment_id"),
	CONSTRAINT "attachments_sized" CHECK ("attachments"."stored_bytes" = octet_length("attachments"."content") and "attachments"."stored_bytes" > 0),
	CONSTRAINT "attachments_hashed" CHECK ("attachments"."stored_sha256" ~ '^[0-9a-f]{64}$' and "attachments"."received_sha256" ~ '^[0-9a-f]{64}$')
);
--> statement-breakpoint
CREATE TABLE "jobs" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"job_number" text NOT NULL,
	"status" text NOT NULL,
	"requested_on" date,
	"first_visit_on" date,
	"diagnosed_on" date,
	"parts_ordered_on" date,
	"parts_received_on" date,
	"completed_on" date NOT NULL,
	"invoiced_on" date,
	"complaint" text NOT NULL,
	"cause_note" text NOT NULL,
	"correction" text NOT NULL,
	"symptom" varchar(60),
	"component" varchar(60),
	"failure_mode" text,
	"cause" varchar(60) NOT NULL,
	"visits" integer NOT NULL,
	"technician" text,
	"payer" text NOT NULL,
	"labour_minutes" integer,
	"labour_cents" bigint,
	"trip_cents" bigint,
	"currency" varchar(3) NOT NULL,
	"authorization_number" text,
	"authorized_on" date,
	"callback_of" text,
	"failed_on" date GENERATED ALWAYS AS (coalesce(requested_on, first_visit_on, completed_on)) STORED,
	"counted_as" text GENERATED ALWAYS AS (case when status <> 'closed' then 'nothing' when cause = 'component' and component is not null then 'failure' else 'call' end) STORED,
	"batch_id" bigint,
	CONSTRAINT "jobs_unit_id_job_id_pk" PRIMARY KEY("unit_id","job_id"),
	CONSTRAINT "jobs_one_number_a_unit" UNIQUE("unit_id","job_number"),
	CONSTRAINT "jobs_known_status" CHECK ("jobs"."status" in ('closed', 'void', 'cancelled', 'estimate', 'duplicate')),
	CONSTRAINT "jobs_visit_after_request" CHECK ("jobs"."requested_on" <= "jobs"."first_visit_on"),
	CONSTRAINT "jobs_complete_after_request" CHECK ("jobs"."requested_on" <= "jobs"."completed_on"),
	CONSTRAINT "jobs_complete_after_visit" CHECK ("jobs"."first_visit_on" <= "jobs"."completed_on"),
	CONSTRAINT "jobs_visits_not_negative" CHECK ("jobs"."visits" >= 0),
	CONSTRAINT "jobs_labour_not_negative" CHECK ("jobs"."labour_minutes" >= 0 and "jobs"."labour_cents" >= 0 and "jobs"."trip_cents" >= 0),
	CONSTRAINT "jobs_callback_of_another" CHECK ("jobs"."callback_of" <> "jobs"."job_number")
);
--> statement-breakpoint
CREATE TABLE "part_lines" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"line" integer NOT NULL,
	"part_number" text NOT NULL,
	"description" text NOT NULL,
	"component" varchar(60),
	"role" text NOT NULL,
	"quantity" integer NOT NULL,
	"unit_cost_cents" bigint NOT NULL,
	"currency" varchar(3) NOT NULL,
	"distributor" text,
	"invoice_number" text,
	"invoice_line" text,
	"invoiced_on" date,
	"batch_id" bigint,
	CONSTRAINT "part_lines_unit_id_job_id_line_pk" PRIMARY KEY("unit_id","job_id","line"),
	CONSTRAINT "part_lines_some_quantity" CHECK ("part_lines"."quantity" > 0),
	CONSTRAINT "part_lines_cost_not_negative" CHECK ("part_lines"."unit_cost_cents" >= 0),
	CONSTRAINT "part_lines_count_from_one" CHECK ("part_lines"."line" >= 1)
);
--> statement-breakpoint
CREATE TABLE "readings" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"number" integer NOT NULL,
	"check_key" varchar(60) NOT NULL,
	"point_a" text,
	"point_b" text,
	"mode" text NOT NULL,
	"outcome" text NOT NULL,
	"value" double precision,
	"unit" text,
	"word" text,
	"power" text NOT NULL,
	"isolated" boolean,
	"load_connected" boolean,
	"commanded" boolean,
	"temperature_c" double precision,
	"sheet_low" double precision,
	"sheet_high" double precision,
	"sheet_reference" text,
	"note" text,
	"technician" text,
	"taken_at" timestamp with time zone,
	"batch_id" bigint,
	CONSTRAINT "readings_unit_id_job_id_number_pk" PRIMARY KEY("unit_id","job_id","number"),
	CONSTRAINT "readings_known_outcome" CHECK ("readings"."outcome" in ('number', 'open', 'short', 'no_reading', 'finding', 'code')),
	CONSTRAINT "readings_number_has_value" CHECK (("readings"."outcome" = 'number') = ("readings"."value" is not null)),
	CONSTRAINT "readings_number_has_unit" CHECK ("readings"."outcome" <> 'number' or "readings"."unit" is not null),
	CONSTRAINT "readings_word_where_due" CHECK (("readings"."outcome" in ('finding', 'code')) = ("readings"."word" is not null)),
	CONSTRAINT "readings_sheet_in_order" CHECK ("readings"."sheet_low" <= "readings"."sheet_high"),
	CONSTRAINT "readings_known_power" CHECK ("readings"."power" in ('off', 'powered_panels_closed', 'live')),
	CONSTRAINT "readings_finite" CHECK ("readings"."value" <> 'NaN'::double precision and abs("readings"."value") <> 'Infinity'::double precision)
);
--> statement-breakpoint
CREATE TABLE "units" (
	"unit_id" bigint NOT NULL,
	"maker_id" integer NOT NULL,
	"model_id" integer NOT NULL,
	"serial" text,
	"serial_normalised" text,
	"identified" boolean NOT NULL,
	"in_register" boolean NOT NULL,
	"made_from" date,
	"made_until" date,
	"shipped_on" date,
	"sold_on" date,
	"delivered_on" date,
	"installed_on" date,
	"occupied_on" date,
	"registered_on" date,
	"retired_on" date,
	"recorded_from" date,
	"in_service_on" date,
	"in_service_basis" text,
	"use" text NOT NULL,
	"territory" text,
	"owner_number" integer NOT NULL,
	"batch_id" bigint,
	CONSTRAINT "units_unit_id_pk" PRIMARY KEY("unit_id"),
	CONSTRAINT "units_one_serial_a_maker" UNIQUE("unit_id","maker_id","serial_normalised"),
	CONSTRAINT "units_identified_have_serial" CHECK ("units"."identified" = ("units"."serial_normalised" is not null)),
	CONSTRAINT "units_placeholder_not_in_register" CHECK ("units"."identified" or not "units"."in_register"),
	CONSTRAINT "units_made_in_order" CHECK ("units"."made_from" <= "units"."made_until"),
	CONSTRAINT "units_made_both_ends" CHECK (("units"."made_from" is null) = ("units"."made_until" is null)),
	CONSTRAINT "units_made_before_sale" CHECK ("units"."made_from" <= "units"."sold_on"),
	CONSTRAINT "units_service_has_basis" CHECK (("units"."in_service_on" is null) = ("units"."in_service_basis" is null)),
	CONSTRAINT "units_retire_after_service" CHECK ("units"."in_service_on" <= "units"."retired_on"),
	CONSTRAINT "units_known_use" CHECK ("units"."use" in ('household', 'commercial')),
	CONSTRAINT "units_owner_counts_from_one" CHECK ("units"."owner_number" >= 1)
);
--> statement-breakpoint
CREATE TABLE "shop" (
	"only" boolean PRIMARY KEY DEFAULT true NOT NULL,
	"name" text NOT NULL,
	"currency" varchar(3) NOT NULL,
	"time_zone" text NOT NULL,
	"territory" text NOT NULL,
	"records_from" date,
	"made_grace_months" integer NOT NULL,
	"demo" boolean NOT NULL,
	"batch_id" bigint,
	CONSTRAINT "shop_only_one" CHECK ("shop"."only"),
	CONSTRAINT "shop_grace_not_negative" CHECK ("shop"."made_grace_months" >= 0)
);
--> statement-breakpoint
ALTER TABLE "component_uses" ADD CONSTRAINT "component_uses_component_components_key_fk" FOREIGN KEY ("component") REFERENCES "public"."components"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "component_uses" ADD CONSTRAINT "component_uses_product_type_product_types_key_fk" FOREIGN KEY ("product_type") REFERENCES "public"."product_types"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "expected_ranges" ADD CONSTRAINT "expected_ranges_model_id_models_model_id_fk" FOREIGN KEY ("model_id") REFERENCES "public"."models"("model_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "models" ADD CONSTRAINT "models_maker_id_makers_maker_id_fk" FOREIGN KEY ("maker_id") REFERENCES "public"."makers"("maker_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "models" ADD CONSTRAINT "models_product_type_product_types_key_fk" FOREIGN KEY ("product_type") REFERENCES "public"."product_types"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "symptom_uses" ADD CONSTRAINT "symptom_uses_symptom_symptoms_key_fk" FOREIGN KEY ("symptom") REFERENCES "public"."symptoms"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "symptom_uses" ADD CONSTRAINT "symptom_uses_product_type_product_types_key_fk" FOREIGN KEY ("product_type") REFERENCES "public"."product_types"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "claim_events" ADD CONSTRAINT "claim_events_of_a_claim" FOREIGN KEY ("unit_id","claim_id") REFERENCES "public"."claims"("unit_id","claim_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "claim_lines" ADD CONSTRAINT "claim_lines_of_a_claim" FOREIGN KEY ("unit_id","claim_id") REFERENCES "public"."claims"("unit_id","claim_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_policy_id_policies_policy_id_fk" FOREIGN KEY ("policy_id") REFERENCES "public"."policies"("policy_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "claims" ADD CONSTRAINT "claims_of_a_job" FOREIGN KEY ("unit_id","job_id") REFERENCES "public"."jobs"("unit_id","job_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "job_cells" ADD CONSTRAINT "job_cells_model_id_models_model_id_fk" FOREIGN KEY ("model_id") REFERENCES "public"."models"("model_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "repeated_jobs" ADD CONSTRAINT "repeated_jobs_model_id_models_model_id_fk" FOREIGN KEY ("model_id") REFERENCES "public"."models"("model_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "unit_windows" ADD CONSTRAINT "unit_windows_model_id_models_model_id_fk" FOREIGN KEY ("model_id") REFERENCES "public"."models"("model_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "unplaced_units" ADD CONSTRAINT "unplaced_units_model_id_models_model_id_fk" FOREIGN KEY ("model_id") REFERENCES "public"."models"("model_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "policies" ADD CONSTRAINT "policies_maker_id_makers_maker_id_fk" FOREIGN KEY ("maker_id") REFERENCES "public"."makers"("maker_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "batch_changes" ADD CONSTRAINT "batch_changes_batch_id_batches_batch_id_fk" FOREIGN KEY ("batch_id") REFERENCES "public"."batches"("batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "held_rows" ADD CONSTRAINT "held_rows_batch_id_batches_batch_id_fk" FOREIGN KEY ("batch_id") REFERENCES "public"."batches"("batch_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "attachments" ADD CONSTRAINT "attachments_of_a_job" FOREIGN KEY ("unit_id","job_id") REFERENCES "public"."jobs"("unit_id","job_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "jobs" ADD CONSTRAINT "jobs_unit_id_units_unit_id_fk" FOREIGN KEY ("unit_id") REFERENCES "public"."units"("unit_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "jobs" ADD CONSTRAINT "jobs_symptom_symptoms_key_fk" FOREIGN KEY ("symptom") REFERENCES "public"."symptoms"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "jobs" ADD CONSTRAINT "jobs_component_components_key_fk" FOREIGN KEY ("component") REFERENCES "public"."components"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "part_lines" ADD CONSTRAINT "part_lines_component_components_key_fk" FOREIGN KEY ("component") REFERENCES "public"."components"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "part_lines" ADD CONSTRAINT "part_lines_of_a_job" FOREIGN KEY ("unit_id","job_id") REFERENCES "public"."jobs"("unit_id","job_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "readings" ADD CONSTRAINT "readings_of_a_job" FOREIGN KEY ("unit_id","job_id") REFERENCES "public"."jobs"("unit_id","job_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "units" ADD CONSTRAINT "units_maker_id_makers_maker_id_fk" FOREIGN KEY ("maker_id") REFERENCES "public"."makers"("maker_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "units" ADD CONSTRAINT "units_model_id_models_model_id_fk" FOREIGN KEY ("model_id") REFERENCES "public"."models"("model_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE UNIQUE INDEX "claims_one_open_per_job_and_policy" ON "claims" USING btree ("unit_id","job_id","policy_id") WHERE state <> 'withdrawn';--> statement-breakpoint
CREATE INDEX "job_cells_by_component" ON "job_cells" USING btree ("component");--> statement-breakpoint
CREATE INDEX "repeated_jobs_by_model" ON "repeated_jobs" USING btree ("model_id");--> statement-breakpoint
CREATE INDEX "batch_changes_by_batch" ON "batch_changes" USING btree ("batch_id","table_name");--> statement-breakpoint
CREATE UNIQUE INDEX "batches_one_file_once" ON "batches" USING btree ("kind","file_sha256") WHERE state = 'added';--> statement-breakpoint
CREATE INDEX "attachments_by_batch" ON "attachments" USING btree ("batch_id");--> statement-breakpoint
CREATE INDEX "jobs_by_number" ON "jobs" USING btree ("job_number");--> statement-breakpoint
CREATE INDEX "jobs_by_completed" ON "jobs" USING btree ("completed_on");--> statement-breakpoint
CREATE INDEX "jobs_by_component" ON "jobs" USING btree ("component","completed_on");--> statement-breakpoint
CREATE INDEX "jobs_by_batch" ON "jobs" USING btree ("batch_id");--> statement-breakpoint
CREATE INDEX "part_lines_by_number" ON "part_lines" USING btree ("part_number");--> statement-breakpoint
CREATE INDEX "part_lines_by_batch" ON "part_lines" USING btree ("batch_id");--> statement-breakpoint
CREATE INDEX "readings_by_batch" ON "readings" USING btree ("batch_id");--> statement-breakpoint
CREATE INDEX "units_by_model" ON "units" USING btree ("model_id");--> statement-breakpoint
CREATE INDEX "units_by_serial" ON "units" USING btree ("serial_normalised");