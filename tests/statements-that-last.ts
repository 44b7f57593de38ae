import { Client } from "pg";

const lookedEverySeconds = 30;
const lastsSeconds = 60;

/**
 * Says on the error output what a server has been busy with for over a minute, and what it waits for: of a test that
 * came to its time limit nothing else would tell where it stood.
 * @returns what ends the watch
 */
export function watchStatements(url: string): () => void {
  const timer = setInterval(() => void tellOnce(url), lookedEverySeconds * 1000);
  timer.unref();
  return () => clearInterval(timer);
}

async function tellOnce(url: string): Promise<void> {
  const client = new Client({ connectionString: url });
  client.on("error", () => {}); // tests stop servers; there is nothing to tell then
  try {
    await client.connect();
    const { rows } = await client.query<{ seconds: number; state: string; waits: string | null; query: string }>(
      `select extract(epoch from now() - query_start)::integer as seconds, state, concat_ws(' ', wait_event_type, wait_event) as waits, query
       from pg_stat_activity where backend_type = 'client backend' and state <> 'idle' and now() - query_start > interval '${lastsSeconds} s'`,
    );
    for (const { seconds, state, waits, query } of rows)
      console.error(`tests: for ${seconds} s a session is ${state} (${waits ?? ""}): ${query}`);
  } catch {
    // The tests themselves say what is wrong with the server.
  } finally {
    await client.end().catch(() => {});
  }
}
