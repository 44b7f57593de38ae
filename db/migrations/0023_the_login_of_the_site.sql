-- Loads make their staging tables in a schema of their own: the only one in which the login of the site may make any.
CREATE SCHEMA IF NOT EXISTS staging;
--> statement-breakpoint
-- The change log is written by its triggers in the name of its owner, so that no other login needs a right to write it.
ALTER FUNCTION log_changes() SECURITY DEFINER SET search_path TO public, pg_temp;
--> statement-breakpoint
ALTER FUNCTION chain_change() SECURITY DEFINER SET search_path TO public, pg_temp;
--> statement-breakpoint
-- Whoever could put the trigger on a table of their own could write entries about nothing.
REVOKE EXECUTE ON FUNCTION log_changes(), chain_change(), refuse_change(), watch_changes(regclass) FROM PUBLIC;
--> statement-breakpoint
-- Where the server keeps its files, for whoever watches the room on that disk. Only some logins may ask by themselves.
CREATE FUNCTION data_folder() RETURNS text LANGUAGE sql STABLE SECURITY DEFINER SET search_path TO pg_catalog, pg_temp AS $$
	SELECT current_setting('data_directory')
$$;
