import { fork } from "node:child_process";
import { connect } from "node:net";
import process from "node:process";
import { setTimeout as pause } from "node:timers/promises";
import { Refusal, say } from "./say.mjs";
import { noteServing } from "./serving.mjs";

const next = "node_modules/next/dist/bin/next";
const longestStopMs = 15_000;

/** Serves until asked to stop, or until the server ends by itself, which is an error. */
export async function serve({
  port,
  development,
  listen = "127.0.0.1",
  databaseUrl,
  signal,
  announce = announceReady,
}) {
  if (signal.aborted) return;
  const noLongerServing = noteServing();
  const server = fork(next, [development ? "dev" : "start", "--hostname", listen, "--port", String(port)], {
    execArgv: ["--import", new URL("end-with-parent.mjs", import.meta.url).href],
    env: {
      ...process.env,
      DATABASE_URL: databaseUrl,
      NEXT_TELEMETRY_DISABLED: "1",
      OHMSWORTH_STARTED_BY: String(process.pid),
    },
  });
  const ended = new Promise((resolve) =>
    server.once("exit", (code, killedBy) => resolve(killedBy ?? `exit code ${code}`)),
  );
  const stopped = new Promise((resolve) => signal.addEventListener("abort", () => resolve("stop"), { once: true }));
  try {
    const first = await Promise.race([listening(port), ended, stopped]);
    if (first === "listening") announce(port);
    const last = first === "listening" ? await Promise.race([ended, stopped]) : first;
    if (last === "stop") return await stop(server, ended);
    throw new Refusal(`The web server ended by itself (${last}); its own message is above.`);
  } finally {
    noLongerServing();
  }
}

function announceReady(port) {
  say(`ready at http://127.0.0.1:${port}`);
  say("there is no sign-in yet: the site listens on this computer only, and whoever can use this computer can use it.");
  say("stop it with Ctrl-C.");
}

async function stop(server, ended) {
  say("stopping …");
  server.kill("SIGTERM");
  const late = setTimeout(() => server.kill("SIGKILL"), longestStopMs);
  await ended;
  clearTimeout(late);
}

async function listening(port) {
  while (!(await answers(port))) await pause(100);
  return "listening";
}

function answers(port) {
  return new Promise((resolve) => {
    const probe = connect(port, "127.0.0.1");
    probe.once("error", () => resolve(false));
    probe.once("connect", () => {
      probe.destroy();
      resolve(true);
    });
  });
}
