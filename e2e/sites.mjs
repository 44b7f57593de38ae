// Which sites the browser tests run against. Every process of a run reads this file and must come to the same answer, so
// the ports are chosen by the first and handed down in the environment.
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";

/** Workers, each with a site and a database of its own: what one test stores, a test beside it does not see. */
const workers = 2;

process.env.E2E_PORTS ??= (await freePorts(workers + 1)).join(" ");

const all = process.env.E2E_PORTS.split(" ").map((port) => ({
  port: Number(port),
  note: join(tmpdir(), `ohmsworth-e2e-database-${port}`),
  /** Cookies of the invented company's owner, made before the first test. */
  owner: join(tmpdir(), `ohmsworth-e2e-owner-${port}.json`),
}));

export const sites = all.slice(0, workers);

/** A site without company and people, for what happens before there are any; its tests run in one worker. */
export const emptySite = { ...all[workers], people: "nobody yet" };

/** The site of the worker that this process is; the first, for the process that starts them all. */
export const ownSite = siteOf(Number(process.env.TEST_PARALLEL_INDEX ?? 0));

function siteOf(worker) {
  const site = sites[worker];
  if (site === undefined) throw new Error(`there is no site for worker ${worker}`);
  return site;
}

/** All are held until the last is found, so that no two are the same. */
async function freePorts(count) {
  const probes = Array.from({ length: count }, () => createServer());
  const ports = await Promise.all(probes.map(listen));
  await Promise.all(probes.map((probe) => new Promise((resolve) => probe.close(resolve))));
  return ports;
}

function listen(probe) {
  return new Promise((resolve, reject) => {
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => resolve(probe.address().port));
  });
}
