CREATE TABLE "credentials" (
	"id" varchar(36) PRIMARY KEY NOT NULL,
	"account_id" text NOT NULL,
	"provider_id" text NOT NULL,
	"person_id" varchar(36) NOT NULL,
	"password" text,
	"created_at" timestamp with time zone NOT NULL,
	"updated_at" timestamp with time zone NOT NULL,
	CONSTRAINT "credentials_one_of_a_kind" UNIQUE("person_id","provider_id")
);
--> statement-breakpoint
CREATE TABLE "invitations" (
	"invitation_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "invitations_invitation_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"token_sha256" varchar(64) NOT NULL,
	"email" text NOT NULL,
	"name" text NOT NULL,
	"role" text NOT NULL,
	"technician" text,
	"person_id" varchar(36),
	"made_by" text NOT NULL,
	"created_at" timestamp with time zone NOT NULL,
	"expires_at" timestamp with time zone NOT NULL,
	"used_at" timestamp with time zone,
	"ended_at" timestamp with time zone,
	CONSTRAINT "invitations_one_hash" UNIQUE("token_sha256"),
	CONSTRAINT "invitations_hashed" CHECK ("invitations"."token_sha256" ~ '^[0-9a-f]{64}$'),
	CONSTRAINT "invitations_known_role" CHECK ("invitations"."role" in ('technician', 'administrator', 'manager', 'owner', 'reader')),
	CONSTRAINT "invitations_end_later" CHECK ("invitations"."expires_at" > "invitations"."created_at"),
	CONSTRAINT "invitations_used_or_ended" CHECK ("invitations"."used_at" is null or "invitations"."ended_at" is null)
);
--> statement-breakpoint
CREATE TABLE "people" (
	"id" varchar(36) PRIMARY KEY NOT NULL,
	"name" text NOT NULL,
	"email" text NOT NULL,
	"email_verified" boolean DEFAULT false NOT NULL,
	"image" text,
	"created_at" timestamp with time zone NOT NULL,
	"updated_at" timestamp with time zone NOT NULL,
	"role" text NOT NULL,
	"technician" text,
	"demo" boolean DEFAULT false NOT NULL,
	"ended_at" timestamp with time zone,
	CONSTRAINT "people_one_email" UNIQUE("email"),
	CONSTRAINT "people_known_role" CHECK ("people"."role" in ('technician', 'administrator', 'manager', 'owner', 'reader')),
	CONSTRAINT "people_email_small" CHECK ("people"."email" = lower("people"."email")),
	CONSTRAINT "people_have_name" CHECK (btrim("people"."name") <> '')
);
--> statement-breakpoint
CREATE TABLE "recovery_codes" (
	"person_id" varchar(36) NOT NULL,
	"code_sha256" varchar(64) NOT NULL,
	"used_at" timestamp with time zone,
	CONSTRAINT "recovery_codes_person_id_code_sha256_pk" PRIMARY KEY("person_id","code_sha256"),
	CONSTRAINT "recovery_codes_hashed" CHECK ("recovery_codes"."code_sha256" ~ '^[0-9a-f]{64}$')
);
--> statement-breakpoint
CREATE TABLE "second_factors" (
	"person_id" varchar(36) PRIMARY KEY NOT NULL,
	"sealed_secret" text NOT NULL,
	"created_at" timestamp with time zone NOT NULL,
	"confirmed_at" timestamp with time zone,
	"last_step" integer DEFAULT 0 NOT NULL
);
--> statement-breakpoint
CREATE TABLE "sessions" (
	"id" varchar(36) PRIMARY KEY NOT NULL,
	"token" text NOT NULL,
	"person_id" varchar(36) NOT NULL,
	"expires_at" timestamp with time zone NOT NULL,
	"created_at" timestamp with time zone NOT NULL,
	"updated_at" timestamp with time zone NOT NULL,
	"ip_address" text,
	"user_agent" text,
	"seen_at" timestamp with time zone,
	"half_signed_in" boolean DEFAULT false NOT NULL,
	CONSTRAINT "sessions_one_token" UNIQUE("token")
);
--> statement-breakpoint
CREATE TABLE "sign_in_tries" (
	"subject" varchar(64) PRIMARY KEY NOT NULL,
	"count" integer NOT NULL,
	"last_at" timestamp with time zone NOT NULL,
	CONSTRAINT "sign_in_tries_hashed" CHECK ("sign_in_tries"."subject" ~ '^[0-9a-f]{64}$'),
	CONSTRAINT "sign_in_tries_some" CHECK ("sign_in_tries"."count" >= 1)
);
--> statement-breakpoint
ALTER TABLE "api_keys" DROP CONSTRAINT "api_keys_known_scope";--> statement-breakpoint
ALTER TABLE "api_keys" ADD COLUMN "made_by" text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE "api_keys" ADD COLUMN "expires_at" timestamp with time zone;--> statement-breakpoint
ALTER TABLE "credentials" ADD CONSTRAINT "credentials_person_id_people_id_fk" FOREIGN KEY ("person_id") REFERENCES "public"."people"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "invitations" ADD CONSTRAINT "invitations_person_id_people_id_fk" FOREIGN KEY ("person_id") REFERENCES "public"."people"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "recovery_codes" ADD CONSTRAINT "recovery_codes_person_id_people_id_fk" FOREIGN KEY ("person_id") REFERENCES "public"."people"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "second_factors" ADD CONSTRAINT "second_factors_person_id_people_id_fk" FOREIGN KEY ("person_id") REFERENCES "public"."people"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_person_id_people_id_fk" FOREIGN KEY ("person_id") REFERENCES "public"."people"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "sessions_by_person" ON "sessions" USING btree ("person_id");--> statement-breakpoint
CREATE INDEX "sign_in_tries_by_time" ON "sign_in_tries" USING btree ("last_at");--> statement-breakpoint
ALTER TABLE "api_keys" ADD CONSTRAINT "api_keys_known_scope" CHECK ("api_keys"."scope" in ('jobs', 'read'));--> statement-breakpoint
SELECT watch_changes(name::regclass) FROM unnest(ARRAY['people', 'invitations', 'second_factors']) name;
