import { fork } from "node:child_process";
import { connect } from "node:net";
import process from "node:process";
import { setTimeout as pause } from "node:timers/promises";
import { Refusal, say } from "./say.mjs";
import { noteServing } from "./serving.mjs";
import { setUpCodeFor } from "./set-up-code.mjs";

const next = "node_modules/next/dist/bin/next";
const longestStopMs = 15_000;

/** Serves until asked to stop, or until the server ends by itself, which is an error. */
export async function serve({
  port,
  development,
  listen = "127.0.0.1",
  databaseUrl,
  signal,
  people = "known",
  announce = announceReady,
}) {
  if (signal.aborted) return;
  const setUpCode = setUpCodeFor({ people, host: listen });
  const noLongerServing = noteServing();
  const server = fork(next, [development ? "dev" : "start", "--hostname", listen, "--port", String(port)], {
    execArgv: ["--import", new URL("end-with-parent.mjs", import.meta.url).href],
    env: {
      ...process.env,
      DATABASE_URL: databaseUrl,
      NEXT_TELEMETRY_DISABLED: "1",
      OHMSWORTH_STARTED_BY: String(process.pid),
      OHMSWORTH_SET_UP_CODE: setUpCode,
    },
  });
  const ended = new Promise((resolve) =>
    server.once("exit", (code, killedBy) => resolve(killedBy ?? `exit code ${code}`)),
  );
  const stopped = new Promise((resolve) => signal.addEventListener("abort", () => resolve("stop"), { once: true }));
  try {
    const first = await Promise.race([listening(port), ended, stopped]);
    if (first === "listening") announce(port, people, setUpCode);
    const last = first === "listening" ? await Promise.race([ended, stopped]) : first;
    if (last === "stop") return await stop(server, ended);
    throw new Refusal(`The web server ended by itself (${last}); its own message is above.`);
  } finally {
    noLongerServing();
  }
}

function announceReady(port, people, setUpCode) {
  say(`ready at ${process.env.OHMSWORTH_ORIGIN || `http://127.0.0.1:${port}`}`);
  if (people === "of the invented company")
    say("five people of the invented company may sign in, one of each role; the page shows them with their password.");
  if (people === "nobody yet") say("nobody may sign in yet: whoever opens it first makes the owner's account.");
  if (setUpCode !== "") say(`others can reach it, so that the set-up asks for this code: ${setUpCode}`);
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
