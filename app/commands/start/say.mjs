import process from "node:process";

/** A reason to end that is written for the reader: it is printed alone, without the trace of the program. */
export class Refusal extends Error {
  name = "Refusal";
}

export function say(line) {
  console.log(`ohmsworth: ${line}`);
}

/** Aborts when the process is asked to end. The first request stops the step in hand; everything is then closed in order. */
export function stopSignal() {
  const stop = new AbortController();
  for (const name of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(name, () => stop.abort());
  stopWithNpm(stop);
  return stop.signal;
}

/** npm passes requests to end on, but cannot when it is killed outright: then its child would be left behind. */
function stopWithNpm(stop) {
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  const timer = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(timer);
    stop.abort();
  }, 500);
  timer.unref();
}
