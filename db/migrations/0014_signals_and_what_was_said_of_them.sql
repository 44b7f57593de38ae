CREATE TABLE "found_signals" (
	"as_of" date NOT NULL,
	"signal_key" text NOT NULL,
	"word_kind" text NOT NULL,
	"word" text NOT NULL,
	"product_type" text NOT NULL,
	"maker" text NOT NULL,
	"onset_on" date NOT NULL,
	"observed" integer NOT NULL,
	"expected" double precision NOT NULL,
	"chance" double precision NOT NULL,
	"adjusted" double precision NOT NULL,
	"lead" jsonb NOT NULL,
	"within" jsonb NOT NULL,
	"symptoms" jsonb NOT NULL,
	CONSTRAINT "found_signals_as_of_signal_key_pk" PRIMARY KEY("as_of","signal_key"),
	CONSTRAINT "found_signals_known_kind" CHECK ("found_signals"."word_kind" in ('component', 'symptom')),
	CONSTRAINT "found_signals_counts" CHECK ("found_signals"."observed" >= 0 and "found_signals"."expected" >= 0),
	CONSTRAINT "found_signals_chances" CHECK ("found_signals"."chance" between 0 and 1 and "found_signals"."adjusted" between 0 and 1)
);
--> statement-breakpoint
CREATE TABLE "signal_marks" (
	"mark_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "signal_marks_mark_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"signal_key" text NOT NULL,
	"kind" text NOT NULL,
	"undoes" bigint,
	"reason" text NOT NULL,
	"by" text NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"as_of" date NOT NULL,
	"observed" integer NOT NULL,
	"expected" double precision NOT NULL,
	CONSTRAINT "signal_marks_undone_once" UNIQUE("undoes"),
	CONSTRAINT "signal_marks_known_kind" CHECK ("signal_marks"."kind" in ('watch', 'not_now', 'explain', 'dismiss', 'undo')),
	CONSTRAINT "signal_marks_undo_names_one" CHECK (("signal_marks"."kind" = 'undo') = ("signal_marks"."undoes" is not null)),
	CONSTRAINT "signal_marks_have_reason" CHECK ("signal_marks"."kind" not in ('explain', 'dismiss') or btrim("signal_marks"."reason") <> ''),
	CONSTRAINT "signal_marks_by_somebody" CHECK (btrim("signal_marks"."by") <> '')
);
--> statement-breakpoint
CREATE TABLE "signal_runs" (
	"as_of" date PRIMARY KEY NOT NULL,
	"basis" text NOT NULL,
	"computed_at" timestamp with time zone NOT NULL,
	"outcome" text NOT NULL,
	"weeks" integer,
	"cells" integer NOT NULL,
	"stories" integer NOT NULL,
	"by_luck" double precision NOT NULL,
	CONSTRAINT "signal_runs_known_outcome" CHECK ("signal_runs"."outcome" in ('followed', 'too-short', 'no-units')),
	CONSTRAINT "signal_runs_short_has_weeks" CHECK (("signal_runs"."outcome" = 'too-short') = ("signal_runs"."weeks" is not null)),
	CONSTRAINT "signal_runs_counts" CHECK ("signal_runs"."cells" >= 0 and "signal_runs"."stories" >= 0 and "signal_runs"."by_luck" >= 0)
);
--> statement-breakpoint
CREATE TABLE "technician_notes" (
	"note_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "technician_notes_note_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"maker_id" integer NOT NULL,
	"model_number" text,
	"serial_from" text,
	"serial_to" text,
	"component" text,
	"words" text NOT NULL,
	"signal_key" text,
	"by" text NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"lifted_at" timestamp with time zone,
	"lifted_by" text,
	CONSTRAINT "technician_notes_say_something" CHECK (btrim("technician_notes"."words") <> '' and btrim("technician_notes"."by") <> ''),
	CONSTRAINT "technician_notes_both_ends" CHECK (("technician_notes"."serial_from" is null) = ("technician_notes"."serial_to" is null)),
	CONSTRAINT "technician_notes_in_order" CHECK ("technician_notes"."serial_from" <= "technician_notes"."serial_to"),
	CONSTRAINT "technician_notes_lifted_by" CHECK (("technician_notes"."lifted_at" is null) = ("technician_notes"."lifted_by" is null))
);
--> statement-breakpoint
ALTER TABLE "found_signals" ADD CONSTRAINT "found_signals_of_a_run" FOREIGN KEY ("as_of") REFERENCES "public"."signal_runs"("as_of") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "signal_marks" ADD CONSTRAINT "signal_marks_undo_a_mark" FOREIGN KEY ("undoes") REFERENCES "public"."signal_marks"("mark_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "technician_notes" ADD CONSTRAINT "technician_notes_maker_id_makers_maker_id_fk" FOREIGN KEY ("maker_id") REFERENCES "public"."makers"("maker_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "signal_marks_by_signal" ON "signal_marks" USING btree ("signal_key");--> statement-breakpoint
CREATE INDEX "technician_notes_by_maker" ON "technician_notes" USING btree ("maker_id");