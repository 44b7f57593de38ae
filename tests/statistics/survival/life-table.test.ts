import { expect, test } from "vitest";
import { lifeTable } from "@/lib/statistics/survival/life-table";
import { expectPrinted, referenceRows } from "../../reference/read-reference";

const kidneyCancer = () =>
  referenceRows("cutler_ederer_1958").map((row) => ({
    start: Number(row.interval_start),
    end: Number(row.interval_start) + 1,
    atStart: Number(row.alive_at_start),
    entered: 0,
    failed: Number(row.died),
    lost: Number(row.lost) + Number(row.withdrawn_alive),
  }));

// Cutler & Ederer 1958, Tables 3-4: inputs and printed results remembered, recomputed.
test("localised kidney cancer, five yearly bands", () => {
  const { rows, complete } = lifeTable(kidneyCancer());
  const row = (year: number) => {
    const found = rows[year - 1];
    if (found === undefined) throw new Error(`no band ${year}`);
    return found;
  };
  expect(complete).toBe(true);
  expectPrinted("K03", {
    eff1: row(1).effective,
    S1: row(1).survivalAtEnd,
    S2: row(2).survivalAtEnd,
    S3: row(3).survivalAtEnd,
    S5: row(5).survivalAtEnd,
    se5: row(5).standardError,
  });
});

// By hand: 10 lives, 4 fail: 0.4 of them, in a band 2 wide; the hazard 2 · 0.4 / (2 · 1.6) = 0.25; error √(0.6 · 0.4 / 10).
test("one band by hand, and the table stops where nobody is watched", () => {
  const band = { start: 0, end: 2, atStart: 10, entered: 0, failed: 4, lost: 0 };
  const empty = { start: 2, end: 4, atStart: 0, entered: 0, failed: 0, lost: 0 };
  const { rows, complete } = lifeTable([band, empty]);
  expect(complete).toBe(false);
  expect(rows).toHaveLength(1);
  expect(rows[0]?.failedShare).toBe(0.4);
  expect(rows[0]?.hazard).toBeCloseTo(0.25, 14);
  expect(rows[0]?.standardError).toBeCloseTo(Math.sqrt((0.6 * 0.4) / 10), 14);
});

test("late entrants count for half of the band they come in", () => {
  const [row] = lifeTable([{ start: 0, end: 1, atStart: 8, entered: 6, failed: 2, lost: 2 }]).rows;
  expect(row?.effective).toBe(8 + 3 - 1);
});

test("when all fail survival is 0 and stays a number", () => {
  const [row] = lifeTable([{ start: 0, end: 1, atStart: 3, entered: 0, failed: 3, lost: 0 }]).rows;
  expect(row).toMatchObject({ survivalAtEnd: 0, standardError: 0, failedShare: 1 });
});

test("bands that cannot be are named", () => {
  const band = { start: 0, end: 1, atStart: 3, entered: 0, failed: 1, lost: 0 };
  expect(() => lifeTable([band, { ...band, start: 2, end: 3 }])).toThrow(
    "bands[1].start must be 1, where the band before ends; it is 2",
  );
  expect(() => lifeTable([{ ...band, lost: 3 }])).toThrow("bands[0] loses more lives than it has");
  expect(() => lifeTable([{ ...band, end: 0 }])).toThrow("bands[0].end must be above its start 0");
});
