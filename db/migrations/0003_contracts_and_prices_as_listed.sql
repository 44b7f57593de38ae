ALTER TABLE "contracts" DROP CONSTRAINT "contracts_cancelled_after_sale";--> statement-breakpoint
ALTER TABLE "part_prices" DROP CONSTRAINT "part_prices_not_negative";--> statement-breakpoint
ALTER TABLE "part_prices" DROP CONSTRAINT "part_prices_part_id_priced_on_distributor_pk";--> statement-breakpoint
ALTER TABLE "contracts" ALTER COLUMN "sold_on" DROP NOT NULL;--> statement-breakpoint
ALTER TABLE "part_prices" ALTER COLUMN "cost_cents" DROP NOT NULL;--> statement-breakpoint
ALTER TABLE "contracts" ADD COLUMN "plan" text;--> statement-breakpoint
ALTER TABLE "contracts" ADD COLUMN "starts_on" date NOT NULL;--> statement-breakpoint
ALTER TABLE "contracts" ADD COLUMN "ends_on" date NOT NULL;--> statement-breakpoint
ALTER TABLE "contracts" ADD COLUMN "wait_days" integer NOT NULL;--> statement-breakpoint
ALTER TABLE "contracts" ADD COLUMN "deductible_cents" bigint;--> statement-breakpoint
ALTER TABLE "contracts" ADD COLUMN "limit_cents" bigint;--> statement-breakpoint
ALTER TABLE "contracts" ADD COLUMN "currency" varchar(3) NOT NULL;--> statement-breakpoint
ALTER TABLE "contracts" ADD COLUMN "holder" text;--> statement-breakpoint
ALTER TABLE "file_drafts" ADD COLUMN "checked" jsonb;--> statement-breakpoint
ALTER TABLE "part_prices" ADD COLUMN "effective_on" date NOT NULL;--> statement-breakpoint
ALTER TABLE "part_prices" ADD CONSTRAINT "part_prices_part_id_effective_on_pk" PRIMARY KEY("part_id","effective_on");--> statement-breakpoint
ALTER TABLE "part_prices" ADD COLUMN "list_cents" bigint;--> statement-breakpoint
ALTER TABLE "parts" ADD COLUMN "replaces" text;--> statement-breakpoint
ALTER TABLE "contracts" DROP COLUMN "policy";--> statement-breakpoint
ALTER TABLE "part_prices" DROP COLUMN "priced_on";--> statement-breakpoint
ALTER TABLE "part_prices" DROP COLUMN "distributor";--> statement-breakpoint
ALTER TABLE "contracts" ADD CONSTRAINT "contracts_in_order" CHECK ("contracts"."starts_on" <= "contracts"."ends_on" and "contracts"."sold_on" <= "contracts"."ends_on");--> statement-breakpoint
ALTER TABLE "contracts" ADD CONSTRAINT "contracts_not_negative" CHECK ("contracts"."wait_days" >= 0 and "contracts"."deductible_cents" >= 0 and "contracts"."limit_cents" >= 0);--> statement-breakpoint
ALTER TABLE "part_prices" ADD CONSTRAINT "part_prices_some" CHECK ("part_prices"."list_cents" is not null or "part_prices"."cost_cents" is not null);--> statement-breakpoint
ALTER TABLE "part_prices" ADD CONSTRAINT "part_prices_not_negative" CHECK ("part_prices"."list_cents" >= 0 and "part_prices"."cost_cents" >= 0);