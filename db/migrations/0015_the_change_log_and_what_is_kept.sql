CREATE TABLE "change_chain" (
	"link" bigint PRIMARY KEY NOT NULL,
	"change_id" bigint NOT NULL,
	"sha256" varchar(64) NOT NULL,
	CONSTRAINT "change_chain_one_link_an_entry" UNIQUE("change_id")
);
--> statement-breakpoint
CREATE TABLE "change_log" (
	"change_id" bigint PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "change_log_change_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"at" timestamp with time zone DEFAULT clock_timestamp() NOT NULL,
	"by" text NOT NULL,
	"table_name" text NOT NULL,
	"key" text NOT NULL,
	"what" text NOT NULL,
	"rows" bigint NOT NULL,
	"width" smallint NOT NULL,
	"row_sha256" text NOT NULL,
	CONSTRAINT "change_log_known_what" CHECK ("change_log"."what" in ('added', 'changed', 'removed', 'emptied')),
	CONSTRAINT "change_log_by_somebody" CHECK (btrim("change_log"."by") <> ''),
	CONSTRAINT "change_log_hashed" CHECK ("change_log"."row_sha256" ~ '^([0-9a-f]{64})?$')
);
--> statement-breakpoint
CREATE TABLE "program_runs" (
	"run_id" integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY (sequence name "program_runs_run_id_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 2147483647 START WITH 1 CACHE 1),
	"program" text NOT NULL,
	"started_at" timestamp with time zone NOT NULL,
	"finished_at" timestamp with time zone NOT NULL,
	"found" bigint NOT NULL,
	"first" text[] NOT NULL,
	"problem" text,
	CONSTRAINT "program_runs_known_program" CHECK ("program_runs"."program" in ('check-evidence', 'check-log', 'retention')),
	CONSTRAINT "program_runs_in_order" CHECK ("program_runs"."started_at" <= "program_runs"."finished_at"),
	CONSTRAINT "program_runs_found_not_negative" CHECK ("program_runs"."found" >= 0)
);
--> statement-breakpoint
CREATE TABLE "erasures" (
	"erasure_id" uuid PRIMARY KEY NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"by" text NOT NULL,
	"reason" text NOT NULL,
	"jobs" jsonb NOT NULL,
	"salt" varchar(64) NOT NULL,
	"prints" jsonb NOT NULL,
	"erased" jsonb NOT NULL,
	"kept" jsonb NOT NULL,
	CONSTRAINT "erasures_by_somebody" CHECK (btrim("erasures"."by") <> '' and btrim("erasures"."reason") <> ''),
	CONSTRAINT "erasures_salted" CHECK ("erasures"."salt" ~ '^[0-9a-f]{64}$')
);
--> statement-breakpoint
CREATE TABLE "retention_limits" (
	"kind" text PRIMARY KEY NOT NULL,
	"days" integer,
	"set_by" text NOT NULL,
	"set_at" timestamp with time zone NOT NULL,
	CONSTRAINT "retention_limits_days" CHECK ("retention_limits"."days" between 1 and 36500),
	CONSTRAINT "retention_limits_by_somebody" CHECK (btrim("retention_limits"."set_by") <> '')
);
--> statement-breakpoint
ALTER TABLE "change_chain" ADD CONSTRAINT "change_chain_change_id_change_log_change_id_fk" FOREIGN KEY ("change_id") REFERENCES "public"."change_log"("change_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
-- What a link of the chain is the hash of: the number of the link, the hash of the link before, and all of the entry.
-- Instants in UTC to the microsecond; parts joined by the record separator. lib and command recompute it in another language.
CREATE FUNCTION change_hash(link bigint, before text, entry change_log) RETURNS text LANGUAGE sql IMMUTABLE SET TimeZone TO 'UTC' AS $$
	SELECT encode(sha256(convert_to(array_to_string(ARRAY[link::text, before, entry.change_id::text, to_char(entry.at, 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"'),
		entry.by, entry.table_name, entry.key, entry.what, entry.rows::text, entry.width::text, entry.row_sha256], chr(30)), 'UTF8')), 'hex')
$$;
--> statement-breakpoint
-- Runs at the commit, one transaction after the other, so that the order of links is the order of commits.
CREATE FUNCTION chain_change() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
	last change_chain;
BEGIN
	PERFORM pg_advisory_xact_lock(7016020009);
	SELECT * INTO last FROM change_chain ORDER BY link DESC LIMIT 1;
	INSERT INTO change_chain (link, change_id, sha256)
	VALUES (coalesce(last.link, 0) + 1, NEW.change_id, change_hash(coalesce(last.link, 0) + 1, coalesce(last.sha256, ''), NEW));
	RETURN NULL;
END
$$;
--> statement-breakpoint
CREATE CONSTRAINT TRIGGER change_log_chained AFTER INSERT ON change_log DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION chain_change();
--> statement-breakpoint
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
	RAISE EXCEPTION '% is only ever added to', TG_TABLE_NAME USING ERRCODE = 'insufficient_privilege';
END
$$;
--> statement-breakpoint
CREATE TRIGGER change_log_only_grows BEFORE UPDATE OR DELETE OR TRUNCATE ON change_log FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
--> statement-breakpoint
CREATE TRIGGER change_chain_only_grows BEFORE UPDATE OR DELETE OR TRUNCATE ON change_chain FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
--> statement-breakpoint
REVOKE UPDATE, DELETE, TRUNCATE ON change_log, change_chain FROM PUBLIC;
--> statement-breakpoint
-- Once a statement. Its argument is SQL for the key of a row r. A statement that touched many rows, as a load may, is one entry.
CREATE FUNCTION log_changes() RETURNS trigger LANGUAGE plpgsql SET TimeZone TO 'UTC' SET DateStyle TO 'ISO' AS $$
DECLARE
	touched bigint;
	source text := CASE TG_OP WHEN 'DELETE' THEN 'rows_before' ELSE 'rows_after' END;
	done text := CASE TG_OP WHEN 'INSERT' THEN 'added' WHEN 'UPDATE' THEN 'changed' WHEN 'DELETE' THEN 'removed' ELSE 'emptied' END;
	person text := nullif(current_setting('ohmsworth.actor', true), '');
	columns smallint := (SELECT max(attnum) FROM pg_attribute WHERE attrelid = TG_RELID);
BEGIN
	IF TG_OP = 'TRUNCATE' THEN
		INSERT INTO change_log (by, table_name, key, what, rows, width, row_sha256)
		VALUES (coalesce(person, 'the program'), TG_TABLE_NAME, '', done, 0, columns, '');
		RETURN NULL;
	END IF;
	EXECUTE format('SELECT count(*) FROM (SELECT FROM %I LIMIT 101) few', source) INTO touched;
	IF touched BETWEEN 1 AND 100 THEN
		EXECUTE format('INSERT INTO change_log (by, table_name, key, what, rows, width, row_sha256)
			SELECT coalesce($1, nullif(btrim(coalesce(j ->> ''by'', j ->> ''set_by'', j ->> ''published_by'', j ->> ''received_by'', j ->> ''removed_by'', j ->> ''entered_by'', '''')), ''''), ''the program''),
				$2, key, $3, 1, $4, encode(sha256(convert_to(j::text, ''UTF8'')), ''hex'')
			FROM (SELECT to_jsonb(r) AS j, %s AS key FROM %I r) touched_rows ORDER BY key', TG_ARGV[0], source)
		USING person, TG_TABLE_NAME, done, columns;
	ELSIF touched > 100 THEN
		EXECUTE format('SELECT count(*) FROM %I', source) INTO touched;
		INSERT INTO change_log (by, table_name, key, what, rows, width, row_sha256)
		VALUES (coalesce(person, 'the program'), TG_TABLE_NAME, '', done, touched, columns, '');
	END IF;
	RETURN NULL;
END
$$;
--> statement-breakpoint
-- From now on what happens to the rows of a table is logged. Not for tables that large loads fill: a trigger there would slow them.
CREATE FUNCTION watch_changes(watched regclass) RETURNS void LANGUAGE plpgsql AS $$
DECLARE
	keyed text := (SELECT 'concat_ws(chr(31), ' || string_agg(format('r.%I', a.attname), ', ' ORDER BY k.place) || ')'
		FROM pg_index i CROSS JOIN LATERAL unnest(i.indkey::smallint[]) WITH ORDINALITY k (attnum, place)
		JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = k.attnum WHERE i.indrelid = watched AND i.indisprimary);
BEGIN
	EXECUTE format('CREATE TRIGGER log_added AFTER INSERT ON %s REFERENCING NEW TABLE AS rows_after FOR EACH STATEMENT EXECUTE FUNCTION log_changes(%L)', watched, keyed);
	EXECUTE format('CREATE TRIGGER log_changed AFTER UPDATE ON %s REFERENCING OLD TABLE AS rows_before NEW TABLE AS rows_after FOR EACH STATEMENT EXECUTE FUNCTION log_changes(%L)', watched, keyed);
	EXECUTE format('CREATE TRIGGER log_removed AFTER DELETE ON %s REFERENCING OLD TABLE AS rows_before FOR EACH STATEMENT EXECUTE FUNCTION log_changes(%L)', watched, keyed);
	EXECUTE format('CREATE TRIGGER log_emptied AFTER TRUNCATE ON %s FOR EACH STATEMENT EXECUTE FUNCTION log_changes(%L)', watched, keyed);
END
$$;
--> statement-breakpoint
SELECT watch_changes(name::regclass) FROM unnest(ARRAY['shop', 'batches', 'hand_edits', 'job_joins', 'unit_facts', 'repair_spans', 'policies', 'claim_events',
	'remittances', 'remittance_postings', 'payer_wordings', 'stock_parts', 'stock_movements', 'part_order_events', 'sheet_versions', 'technician_asks',
	'technician_notes', 'signal_marks', 'removed_attachments', 'api_keys', 'restore_drills', 'program_runs', 'erasures', 'retention_limits']) name;
