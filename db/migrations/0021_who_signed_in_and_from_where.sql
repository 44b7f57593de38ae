CREATE TABLE "sign_ins" (
	"sign_in_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "sign_ins_sign_in_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"at" timestamp with time zone DEFAULT now() NOT NULL,
	"person_id" varchar(36),
	"outcome" text NOT NULL,
	"came_from" text NOT NULL,
	"known_device" boolean NOT NULL,
	CONSTRAINT "sign_ins_known_outcome" CHECK ("sign_ins"."outcome" in ('signed in', 'password shown', 'no match', 'wrong code', 'held back', 'signed out'))
);
--> statement-breakpoint
ALTER TABLE "sign_ins" ADD CONSTRAINT "sign_ins_person_id_people_id_fk" FOREIGN KEY ("person_id") REFERENCES "public"."people"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "sign_ins_by_time" ON "sign_ins" USING btree ("at");