// A reading that takes long says how far it is, and ends when it is told to.
import { expect, test } from "vitest";
import { lookAtTable } from "@/lib/intake/tables/look-at-table";
import { fileOf } from "./table-files";

const lines = Array.from({ length: 4_500 }, (_, row) => `${row},pump\n`).join("");

test("the rows read so far are told every thousand", async () => {
  const told: number[] = [];
  await lookAtTable(fileOf(`number,part\n${lines}`), {}, { onProgress: (rows) => told.push(rows) });
  expect(told).toEqual([1_000, 2_000, 3_000, 4_000]);
});

test.each([
  ["text", `number,part\n${lines}`],
  ["JSON Lines", lines.replaceAll(/(\d+),pump/g, '{"number":$1,"part":"pump"}')],
])("a reading of %s ends with the reason that it is given, before the end of the file", async (_, text) => {
  const stop = new AbortController();
  const told: number[] = [];
  const onProgress = (rows: number) => {
    told.push(rows);
    if (rows === 2_000) stop.abort(new Error("enough"));
  };
  await expect(lookAtTable(fileOf(text), {}, { onProgress, signal: stop.signal })).rejects.toThrow("enough");
  expect(told).toEqual([1_000, 2_000]);
});
