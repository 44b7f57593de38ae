CREATE TABLE "open_jobs" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"job_number" text NOT NULL,
	"requested_on" date NOT NULL,
	"complaint" text NOT NULL,
	"symptom" varchar(60) NOT NULL,
	"technician" text,
	"payer" text NOT NULL,
	"callback_of" text,
	"opened_at" timestamp with time zone NOT NULL,
	"closed_at" timestamp with time zone,
	CONSTRAINT "open_jobs_unit_id_job_id_pk" PRIMARY KEY("unit_id","job_id"),
	CONSTRAINT "open_jobs_one_number_a_unit" UNIQUE("unit_id","job_number"),
	CONSTRAINT "open_jobs_callback_of_another" CHECK ("open_jobs"."callback_of" <> "open_jobs"."job_number")
);
--> statement-breakpoint
CREATE TABLE "sheet_answers" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"answer_id" varchar(36) NOT NULL,
	"sequence" integer NOT NULL,
	"body" jsonb NOT NULL,
	"body_sha256" varchar(64) NOT NULL,
	"received_at" timestamp with time zone NOT NULL,
	"reading_number" integer,
	CONSTRAINT "sheet_answers_unit_id_job_id_answer_id_pk" PRIMARY KEY("unit_id","job_id","answer_id"),
	CONSTRAINT "sheet_answers_count_from_one" CHECK ("sheet_answers"."sequence" >= 1),
	CONSTRAINT "sheet_answers_hashed" CHECK ("sheet_answers"."body_sha256" ~ '^[0-9a-f]{64}$')
);
--> statement-breakpoint
CREATE TABLE "sheet_photos" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"photo_id" varchar(36) NOT NULL,
	"attachment_id" bigint NOT NULL,
	"check_key" varchar(60),
	"subject" text NOT NULL,
	"caption" text NOT NULL,
	"width" integer NOT NULL,
	"height" integer NOT NULL,
	"taken_at" timestamp with time zone,
	"received_sha256" varchar(64) NOT NULL,
	"stored_sha256" varchar(64) NOT NULL,
	"received_at" timestamp with time zone NOT NULL,
	"content" "bytea" NOT NULL,
	CONSTRAINT "sheet_photos_unit_id_job_id_photo_id_pk" PRIMARY KEY("unit_id","job_id","photo_id"),
	CONSTRAINT "sheet_photos_once_a_job" UNIQUE("unit_id","job_id","attachment_id")
);
--> statement-breakpoint
CREATE TABLE "sheet_runs" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"versions" jsonb NOT NULL,
	"sheets" jsonb NOT NULL,
	"basis" jsonb NOT NULL,
	"started_at" timestamp with time zone NOT NULL,
	"closed_at" timestamp with time zone,
	CONSTRAINT "sheet_runs_unit_id_job_id_pk" PRIMARY KEY("unit_id","job_id")
);
--> statement-breakpoint
CREATE TABLE "sheet_versions" (
	"sheet_key" varchar(130) NOT NULL,
	"version" integer NOT NULL,
	"document" jsonb NOT NULL,
	"published_at" timestamp with time zone NOT NULL,
	"by" text NOT NULL,
	"reason" text NOT NULL,
	CONSTRAINT "sheet_versions_sheet_key_version_pk" PRIMARY KEY("sheet_key","version"),
	CONSTRAINT "sheet_versions_after_shipped" CHECK ("sheet_versions"."version" >= 2),
	CONSTRAINT "sheet_versions_have_reason" CHECK (btrim("sheet_versions"."reason") <> '')
);
--> statement-breakpoint
CREATE TABLE "technician_asks" (
	"unit_id" bigint NOT NULL,
	"job_id" bigint NOT NULL,
	"item" varchar(200) NOT NULL,
	"label" text NOT NULL,
	"check_key" varchar(60),
	"subject" text,
	"technician" text,
	"asked_at" timestamp with time zone NOT NULL,
	"asked_by" text NOT NULL,
	"answered_at" timestamp with time zone,
	"answer" text,
	"note" text DEFAULT '' NOT NULL,
	CONSTRAINT "technician_asks_unit_id_job_id_item_pk" PRIMARY KEY("unit_id","job_id","item"),
	CONSTRAINT "technician_asks_answer_in_order" CHECK ("technician_asks"."answered_at" >= "technician_asks"."asked_at"),
	CONSTRAINT "technician_asks_answer_whole" CHECK (("technician_asks"."answered_at" is null) = ("technician_asks"."answer" is null)),
	CONSTRAINT "technician_asks_known_answer" CHECK ("technician_asks"."answer" in ('given', 'cannot be had'))
);
--> statement-breakpoint
ALTER TABLE "open_jobs" ADD CONSTRAINT "open_jobs_unit_id_units_unit_id_fk" FOREIGN KEY ("unit_id") REFERENCES "public"."units"("unit_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "open_jobs" ADD CONSTRAINT "open_jobs_symptom_symptoms_key_fk" FOREIGN KEY ("symptom") REFERENCES "public"."symptoms"("key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sheet_answers" ADD CONSTRAINT "sheet_answers_of_a_unit" FOREIGN KEY ("unit_id") REFERENCES "public"."units"("unit_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sheet_photos" ADD CONSTRAINT "sheet_photos_of_an_open_job" FOREIGN KEY ("unit_id","job_id") REFERENCES "public"."open_jobs"("unit_id","job_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sheet_runs" ADD CONSTRAINT "sheet_runs_of_a_unit" FOREIGN KEY ("unit_id") REFERENCES "public"."units"("unit_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "technician_asks" ADD CONSTRAINT "technician_asks_of_a_job" FOREIGN KEY ("unit_id","job_id") REFERENCES "public"."jobs"("unit_id","job_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "open_jobs_by_number" ON "open_jobs" USING btree ("job_number");--> statement-breakpoint
CREATE INDEX "open_jobs_still_open" ON "open_jobs" USING btree ("technician","requested_on") WHERE closed_at is null;--> statement-breakpoint
CREATE INDEX "technician_asks_open" ON "technician_asks" USING btree ("technician","asked_at") WHERE answered_at is null;