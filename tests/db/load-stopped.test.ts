import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import type { LoadPhase } from "@/db/writes/load-result";
import { loadTable } from "@/db/writes/load-table";
import { csv, fileFolder, shopDocument, startAfresh, today } from "./intake-files";
import { stateOfData } from "./state-of-data";
import { commaText, exported, matching } from "./table-files";

const files = fileFolder();
const path = join(files.folder, "stopped.csv");
const rows = Array.from({ length: 1200 }, (_, index) =>
  exported(`J${index % 900}`, `S${index % 900}`, {
    Part: `P-${index % 7}-${Math.floor(index / 900)}`,
    Qty: 1,
    "Unit cost": "2.00",
  }),
);

beforeAll(async () => {
  writeFileSync(path, csv(rows));
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

/** A signal that is given at its n-th look, so that each place where a load can stop is met once. */
function signalAt(look: number): AbortSignal {
  const controller = new AbortController();
  let looks = 0;
  controller.signal.throwIfAborted = () => {
    if (++looks >= look) controller.abort(new Error(`Stopped at look ${look}.`));
    if (controller.signal.aborted) throw controller.signal.reason;
  };
  return controller.signal;
}

test("a load that is stopped, at whichever place, leaves nothing; the same load then goes in whole", {
  timeout: 600_000,
}, async () => {
  const before = await stateOfData();
  const request = { path, fileName: "export.csv", form: commaText, matching, mode: "add", today } as const;
  let stops = 0;
  for (let look = 1; ; look++) {
    const phases: LoadPhase[] = [];
    const [load] = await Promise.allSettled([
      loadTable({ ...request, signal: signalAt(look), onProgress: (_, phase) => void phases.push(phase) }),
    ]);
    if (load.status === "fulfilled") {
      expect(load.value).toMatchObject({ kind: "added", report: { rowsTotal: 1200, rowsNew: 1200 } });
      expect([...new Set(phases)]).toEqual(["reading", "checking", "adding", "counting"]);
      break;
    }
    stops++;
    expect(load.reason).toMatchObject({ message: `Stopped at look ${look}.` });
    expect(await stateOfData(), `stopped at look ${look}, while ${phases.at(-1)}`).toEqual(before);
  }
  expect(stops).toBeGreaterThan(6);
  expect((await stateOfData()).jobs).toHaveLength(900);
  expect(await loadTable(request)).toMatchObject({ kind: "loaded before", rows: 1200 });
});
