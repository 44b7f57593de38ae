CREATE TABLE "demand_knowledge" (
	"only" boolean PRIMARY KEY DEFAULT true NOT NULL,
	"forecast_from" date NOT NULL,
	"knowledge" jsonb NOT NULL,
	"learnt_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "demand_totals" (
	"key" text PRIMARY KEY NOT NULL,
	"currency" varchar(3) NOT NULL,
	"total" jsonb NOT NULL,
	"data_version" text NOT NULL
);
--> statement-breakpoint
CREATE TABLE "part_outlooks" (
	"part_key" text PRIMARY KEY NOT NULL,
	"part_number" text NOT NULL,
	"description" text NOT NULL,
	"component" varchar(60),
	"spellings" jsonb NOT NULL,
	"history_from" date NOT NULL,
	"forecast_from" date NOT NULL,
	"history" jsonb NOT NULL,
	"used_last_year" integer NOT NULL,
	"jobs_last_year" integer NOT NULL,
	"last_used_on" date,
	"unit_cost_cents" bigint,
	"currency" varchar(3) NOT NULL,
	"outlook" jsonb NOT NULL,
	"futures" "bytea" NOT NULL,
	"data_version" text NOT NULL,
	"worked_out_at" timestamp with time zone NOT NULL,
	CONSTRAINT "part_outlooks_versioned" CHECK ("part_outlooks"."data_version" <> '')
);
--> statement-breakpoint
CREATE TABLE "part_plans" (
	"part_key" text PRIMARY KEY NOT NULL,
	"planned_on" date NOT NULL,
	"plan" jsonb NOT NULL
);
--> statement-breakpoint
CREATE TABLE "parts_to_forecast" (
	"part_number" text PRIMARY KEY NOT NULL
);
--> statement-breakpoint
CREATE TABLE "part_order_events" (
	"order_id" integer NOT NULL,
	"version" integer NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"by" text NOT NULL,
	"what" text NOT NULL,
	"detail" jsonb NOT NULL,
	CONSTRAINT "part_order_events_order_id_version_pk" PRIMARY KEY("order_id","version")
);
--> statement-breakpoint
CREATE TABLE "part_orders" (
	"order_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "part_orders_order_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"part_key" text NOT NULL,
	"part_number" text NOT NULL,
	"description" text NOT NULL,
	"supplier" text NOT NULL,
	"quantity" integer NOT NULL,
	"unit_cost_cents" bigint,
	"currency" varchar(3) NOT NULL,
	"state" text NOT NULL,
	"ordered_on" date,
	"expected_on" date,
	"received" integer NOT NULL,
	"closed_on" date,
	"why" text NOT NULL,
	"note" text NOT NULL,
	"version" integer NOT NULL,
	CONSTRAINT "part_orders_some_quantity" CHECK ("part_orders"."quantity" between 1 and 1000000),
	CONSTRAINT "part_orders_known_state" CHECK ("part_orders"."state" in ('draft', 'ordered', 'received', 'cancelled')),
	CONSTRAINT "part_orders_not_more_than_ordered" CHECK ("part_orders"."received" between 0 and "part_orders"."quantity"),
	CONSTRAINT "part_orders_received_is_all" CHECK ("part_orders"."state" <> 'received' or "part_orders"."received" = "part_orders"."quantity"),
	CONSTRAINT "part_orders_ordered_has_day" CHECK (("part_orders"."state" in ('ordered', 'received')) <= ("part_orders"."ordered_on" is not null)),
	CONSTRAINT "part_orders_in_order" CHECK ("part_orders"."ordered_on" <= "part_orders"."expected_on"),
	CONSTRAINT "part_orders_closed_has_day" CHECK (("part_orders"."state" in ('received', 'cancelled')) = ("part_orders"."closed_on" is not null)),
	CONSTRAINT "part_orders_cost_not_negative" CHECK ("part_orders"."unit_cost_cents" >= 0)
);
--> statement-breakpoint
CREATE TABLE "stock_levels" (
	"part_key" text NOT NULL,
	"place" text NOT NULL,
	"on_hand" integer NOT NULL,
	"reserved" integer NOT NULL,
	"kept_from" date NOT NULL,
	"last_counted_on" date,
	CONSTRAINT "stock_levels_part_key_place_pk" PRIMARY KEY("part_key","place")
);
--> statement-breakpoint
CREATE TABLE "stock_movements" (
	"movement_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "stock_movements_movement_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"part_key" text NOT NULL,
	"part_number" text NOT NULL,
	"place" text NOT NULL,
	"kind" text NOT NULL,
	"quantity" integer NOT NULL,
	"reserved" integer NOT NULL,
	"happened_on" date NOT NULL,
	"recorded_at" timestamp with time zone NOT NULL,
	"by" text NOT NULL,
	"note" text NOT NULL,
	"order_id" integer,
	"job_number" text,
	"job_id" bigint,
	"request_key" uuid NOT NULL,
	"request_line" integer NOT NULL,
	CONSTRAINT "stock_movements_once" UNIQUE("request_key","request_line"),
	CONSTRAINT "stock_movements_known_kind" CHECK ("stock_movements"."kind" in ('receipt', 'use', 'count', 'return', 'scrap', 'move', 'reserve', 'release')),
	CONSTRAINT "stock_movements_signed" CHECK (case "stock_movements"."kind" when 'receipt' then "stock_movements"."quantity" > 0 and "stock_movements"."reserved" = 0
        when 'scrap' then "stock_movements"."quantity" < 0 and "stock_movements"."reserved" = 0
        when 'reserve' then "stock_movements"."quantity" = 0 and "stock_movements"."reserved" > 0
        when 'release' then "stock_movements"."quantity" = 0 and "stock_movements"."reserved" < 0
        when 'move' then "stock_movements"."quantity" <> 0 and "stock_movements"."reserved" = 0
        when 'count' then "stock_movements"."reserved" = 0
        else "stock_movements"."quantity" <> 0 and "stock_movements"."reserved" = 0 end),
	CONSTRAINT "stock_movements_receipt_of_order" CHECK ("stock_movements"."order_id" is null or "stock_movements"."kind" = 'receipt'),
	CONSTRAINT "stock_movements_by_somebody" CHECK (btrim("stock_movements"."by") <> '')
);
--> statement-breakpoint
CREATE TABLE "stock_parts" (
	"part_key" text PRIMARY KEY NOT NULL,
	"part_number" text NOT NULL,
	"lead_days" jsonb NOT NULL,
	"review_days" integer NOT NULL,
	"pack" integer NOT NULL,
	"order_cost_cents" bigint NOT NULL,
	"holding_percent" integer NOT NULL,
	"criticality" text NOT NULL,
	"short_one_in" integer NOT NULL,
	"supplier" text NOT NULL,
	"unit_cost_cents" bigint,
	"currency" varchar(3) NOT NULL,
	"superseded_by" text,
	"last_buy_on" date,
	"set_by" text NOT NULL,
	"set_at" timestamp with time zone NOT NULL,
	"version" integer NOT NULL,
	CONSTRAINT "stock_parts_keyed" CHECK ("stock_parts"."part_key" <> ''),
	CONSTRAINT "stock_parts_reviewed" CHECK ("stock_parts"."review_days" between 1 and 365),
	CONSTRAINT "stock_parts_pack" CHECK ("stock_parts"."pack" between 1 and 100000),
	CONSTRAINT "stock_parts_costs_not_negative" CHECK ("stock_parts"."order_cost_cents" >= 0 and "stock_parts"."unit_cost_cents" >= 0),
	CONSTRAINT "stock_parts_holding" CHECK ("stock_parts"."holding_percent" between 0 and 500),
	CONSTRAINT "stock_parts_known_criticality" CHECK ("stock_parts"."criticality" in ('vital', 'usual', 'can wait')),
	CONSTRAINT "stock_parts_wanted_service" CHECK ("stock_parts"."short_one_in" between 2 and 1000),
	CONSTRAINT "stock_parts_superseded_by_another" CHECK ("stock_parts"."superseded_by" <> "stock_parts"."part_number")
);
--> statement-breakpoint
ALTER TABLE "part_plans" ADD CONSTRAINT "part_plans_part_key_part_outlooks_part_key_fk" FOREIGN KEY ("part_key") REFERENCES "public"."part_outlooks"("part_key") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "part_order_events" ADD CONSTRAINT "part_order_events_order_id_part_orders_order_id_fk" FOREIGN KEY ("order_id") REFERENCES "public"."part_orders"("order_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "stock_movements" ADD CONSTRAINT "stock_movements_of_an_order" FOREIGN KEY ("order_id") REFERENCES "public"."part_orders"("order_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "part_orders_by_part" ON "part_orders" USING btree ("part_key");--> statement-breakpoint
CREATE INDEX "part_orders_by_state" ON "part_orders" USING btree ("state");--> statement-breakpoint
CREATE INDEX "stock_movements_by_part" ON "stock_movements" USING btree ("part_key","movement_id");--> statement-breakpoint
CREATE INDEX "stock_movements_by_job" ON "stock_movements" USING btree ("job_id");