DROP TABLE "part_prices" CASCADE;--> statement-breakpoint
ALTER TABLE "parts" DROP CONSTRAINT "parts_pkey";--> statement-breakpoint
ALTER TABLE "parts" ADD COLUMN "effective_on" date NOT NULL;--> statement-breakpoint
ALTER TABLE "parts" ADD COLUMN "list_cents" bigint;--> statement-breakpoint
ALTER TABLE "parts" ADD COLUMN "cost_cents" bigint;--> statement-breakpoint
ALTER TABLE "parts" ADD COLUMN "currency" varchar(3) NOT NULL;--> statement-breakpoint
ALTER TABLE "parts" ADD CONSTRAINT "parts_part_id_effective_on_pk" PRIMARY KEY("part_id","effective_on");--> statement-breakpoint
ALTER TABLE "parts" ADD CONSTRAINT "parts_prices_not_negative" CHECK ("parts"."list_cents" >= 0 and "parts"."cost_cents" >= 0);
