// npm run soak -- proxy: the built site behind a proxy that takes TLS off, asked as browsers ask: cookies are kept for TLS
// only, forms from its own pages are taken and others are not, it asks for TLS from then on, and every redirect stays there.
import { randomBytes } from "node:crypto";
import { request } from "node:https";
import { buildIfChanged } from "../../app/commands/start/build.mjs";
import { choosePort } from "../../app/commands/start/port.mjs";
import { serve } from "../../app/commands/start/serve.mjs";
import { throwAwayDatabase } from "../database-server";
import { type TlsProxy, tlsProxy } from "../tls-proxy";
import { signInPeople } from "./sign-in-people";

const host = "claims.ohmsworth.example";

async function main(): Promise<number> {
  await buildIfChanged(undefined);
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  process.env.OHMSWORTH_SECRET = randomBytes(32).toString("base64url"); // the site takes sessions that are signed with it
  process.env.OHMSWORTH_ORIGIN = `https://${host}`;
  process.env.OHMSWORTH_PROXY = "trusted";
  process.env.OHMSWORTH_NIGHTLY = "off";
  const { closeDatabase } = await import("@/db/close-database");
  const { migrateDatabase } = await import("@/db/migrate");
  const { seedCatalogue } = await import("@/db/seed-catalogue");
  const { prepareSiteRole } = await import("@/db/site-role/prepare-site-role");
  try {
    await migrateDatabase(database.url);
    await seedCatalogue();
    const [owner = {}] = await signInPeople(1, ["owner"]);
    await closeDatabase();
    return await askThrough((await prepareSiteRole(database.url)).url, owner.cookie ?? "");
  } finally {
    await closeDatabase();
    await database.drop();
  }
}

async function askThrough(databaseUrl: string, cookie: string): Promise<number> {
  const port = await choosePort(undefined);
  const stop = new AbortController();
  let announce: () => void = () => {};
  const ready = new Promise<void>((resolve) => {
    announce = resolve;
  });
  const served = serve({ port, development: false, databaseUrl, signal: stop.signal, announce });
  await ready;
  const proxy = await tlsProxy(host, port);
  try {
    const wrong = await whatIsWrong(proxy, cookie);
    for (const sentence of wrong) console.log(`WRONG ${sentence}`);
    console.log(wrong.length === 0 ? "behind a proxy with TLS all is as it ought to be" : `${wrong.length} are wrong`);
    return wrong.length === 0 ? 0 : 1;
  } finally {
    await proxy.stop();
    stop.abort();
    await served;
  }
}

async function whatIsWrong(proxy: TlsProxy, cookie: string): Promise<readonly string[]> {
  const wrong: string[] = [];
  const must = (holds: boolean, sentence: string) => void (holds || wrong.push(sentence));
  must(cookie.startsWith("__Host-ohmsworth-session="), `the session's cookie is ${cookie.split("=")[0]}`);

  const signIn = await over(proxy, "GET", "/sign-in");
  must(signIn.status === 200, `the page for signing in answers ${signIn.status}`);
  const age = Number(/max-age=(\d+)/.exec(String(signIn.headers["strict-transport-security"]))?.[1]);
  must(age >= 365 * 86_400, `it asks for TLS for ${age} seconds`);

  const away = await over(proxy, "GET", "/jobs");
  const where = new URL(String(away.headers.location), `https://${host}/jobs`);
  must([303, 307, 308].includes(away.status), `a page for nobody answers ${away.status}`);
  must(where.origin === `https://${host}`, `it sends to ${where.origin}`);

  const jobs = await over(proxy, "GET", "/jobs", { cookie });
  must(jobs.status === 200, `a page for somebody who is signed in answers ${jobs.status}`);

  const upload = { cookie, "sec-fetch-site": "same-origin", "content-type": "application/octet-stream" };
  const path = "/files/upload?name=units.csv";
  const own = await over(proxy, "POST", path, { ...upload, origin: `https://${host}` });
  must(own.status === 400 || own.status === 201, `a file from the site's own page is answered with ${own.status}`);
  const foreign = await over(proxy, "POST", path, { ...upload, origin: "https://elsewhere.example" });
  must(foreign.status === 403, `a file from another site is answered with ${foreign.status}`);
  const told = await over(proxy, "POST", path, {
    ...upload,
    origin: "https://evil.example",
    "x-forwarded-host": "evil.example",
  });
  must(told.status === 403, `a request that names its own proxy is answered with ${told.status}`);
  return wrong;
}

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
}

function over(proxy: TlsProxy, method: string, path: string, headers: Record<string, string> = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request(
      {
        host: "127.0.0.1",
        servername: host,
        port: proxy.port,
        ca: proxy.certificate,
        method,
        path,
        headers: { host, ...headers },
      },
      (answer) => {
        answer.resume();
        answer.once("end", () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers }));
      },
    );
    asked.once("error", reject);
    asked.end(method === "POST" ? "serial\nA1\n" : undefined);
  });
}

main().then(
  (code) => process.exit(code),
  (error) => {
    console.error(error);
    process.exit(1);
  },
);
