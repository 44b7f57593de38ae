import postgres, { type Sql } from "postgres";

type Options = { readonly max: number; readonly applicationName: string };

/** A postgres.js client; it connects at the first query. */
export function postgresJsClient(url: string, { max, applicationName }: Options): Sql {
  const { address, socket } = withoutSocket(url);
  return postgres(address, {
    max,
    ...(socket === undefined ? {} : { path: socket }),
    idle_timeout: 60,
    connect_timeout: 10,
    onnotice: () => {},
    connection: { application_name: applicationName },
    types: { day: { to: 1082, from: [1082], serialize: asIs, parse: asIs } },
  });
}

/** Left alone, the driver turns a day into an instant at midnight UTC, which is another day west of Greenwich. */
const asIs = (text: string) => text;

/** The driver would send `?host=` to the server as a setting, and does not look for a socket there. */
function withoutSocket(url: string): { address: string; socket: string | undefined } {
  const address = new URL(url);
  const folder = address.searchParams.get("host");
  if (!folder?.startsWith("/")) return { address: url, socket: undefined };
  address.searchParams.delete("host");
  return { address: address.href, socket: `${folder}/.s.PGSQL.${address.port || "5432"}` };
}
