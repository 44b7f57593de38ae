import { createServer } from "node:net";
import { Refusal, say } from "./say.mjs";

const first = 3000;
const tries = 100;

/** The port that was asked for, or else 3000 or the next one that is free. A port asked for is never exchanged for another. */
export async function choosePort(asked) {
  if (asked !== undefined && asked !== "") return await checkedPort(asked);
  for (let port = first; port < first + tries; port++) {
    if (!(await isFree(port))) continue;
    if (port !== first) say(`port ${first} is in use by another program; taking ${port}.`);
    return port;
  }
  throw new Refusal(`Ports ${first} to ${first + tries - 1} are all in use. Name a free one: PORT=8080 npm start`);
}

async function checkedPort(asked) {
  const port = Number(asked);
  if (!/^\d+$/.test(asked) || port < 1 || port > 65535)
    throw new Refusal(`PORT is "${asked}"; it must be a whole number from 1 to 65535.`);
  if (await isFree(port)) return port;
  throw new Refusal(
    `Port ${port}, which PORT names, cannot be taken: another program uses it, or this user may not. Name another, or leave PORT out to get a free one.`,
  );
}

function isFree(port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", () => resolve(false));
    probe.listen(port, "127.0.0.1", () => probe.close(() => resolve(true)));
  });
}
