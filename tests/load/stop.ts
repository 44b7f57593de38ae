// npm run soak -- stop: the site is asked to end while a file is on its way to it and a page is being made. Both are
// answered, nothing new is, and it is gone within twenty seconds.
import { randomBytes } from "node:crypto";
import { setTimeout as pause } from "node:timers/promises";
import { buildIfChanged } from "../../app/commands/start/build.mjs";
import { choosePort } from "../../app/commands/start/port.mjs";
import { serve } from "../../app/commands/start/serve.mjs";
import { throwAwayDatabase } from "../database-server";
import { signInPeople } from "./sign-in-people";

const longestMs = 20_000;
const sendingMs = 3000;

async function main(): Promise<number> {
  await buildIfChanged(undefined);
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  process.env.OHMSWORTH_SECRET = randomBytes(32).toString("base64url"); // the site takes sessions that are signed with it
  const { migrateDatabase } = await import("@/db/migrate");
  const { seedCatalogue } = await import("@/db/seed-catalogue");
  const { closeDatabase } = await import("@/db/close-database");
  const { prepareSiteRole } = await import("@/db/site-role/prepare-site-role");
  await migrateDatabase(database.url);
  await seedCatalogue();
  try {
    const [owner = {}] = await signInPeople(1, ["owner"]);
    await closeDatabase();
    return await stopWhileSending((await prepareSiteRole(database.url)).url, owner);
  } finally {
    await closeDatabase();
    await database.drop();
  }
}

async function stopWhileSending(databaseUrl: string, owner: Readonly<Record<string, string>>): Promise<number> {
  const port = await choosePort(undefined);
  const site = `http://127.0.0.1:${port}`;
  const stop = new AbortController();
  let announce: () => void = () => {};
  const ready = new Promise<void>((resolve) => {
    announce = resolve;
  });
  const served = serve({ port, development: false, databaseUrl, signal: stop.signal, announce });
  await ready;
  const headers = { ...owner, origin: site, "sec-fetch-site": "same-origin" };
  await fetch(`${site}/jobs`, { headers }).then((answer) => answer.text());
  const sending = fetch(`${site}/files/upload?name=slow.csv`, {
    method: "POST",
    headers,
    body: slowBody(),
    duplex: "half",
  } as RequestInit); // the types of fetch do not know duplex
  await pause(sendingMs / 3);
  const page = fetch(`${site}/today`, { headers, redirect: "manual" });
  await pause(20);
  const asked = performance.now();
  stop.abort();
  const [sent, seen] = await Promise.allSettled([sending, page]);
  await served;
  const took = performance.now() - asked;
  const later = await fetch(`${site}/healthz`).then(
    () => "answered",
    () => "refused",
  );
  const status = (result: PromiseSettledResult<Response>) =>
    result.status === "fulfilled" ? result.value.status : String(result.reason);
  console.log(
    `file on its way: ${status(sent)}; page being made: ${status(seen)}; gone after ${Math.round(took)} ms; a request after that: ${later}`,
  );
  return status(sent) === 201 && status(seen) === 200 && later === "refused" && took < longestMs ? 0 : 1;
}

function slowBody(): ReadableStream<Uint8Array> {
  const parts = 15;
  let part = 0;
  return new ReadableStream({
    async pull(controller) {
      if (part === parts) return controller.close();
      await pause(sendingMs / parts);
      controller.enqueue(
        new TextEncoder().encode(part === 0 ? "job_number,completed_on\n" : `J${part},2026-01-0${1 + (part % 9)}\n`),
      );
      part += 1;
    },
  });
}

main().then(
  (code) => process.exit(code),
  (error) => {
    console.error(error);
    process.exit(1);
  },
);
