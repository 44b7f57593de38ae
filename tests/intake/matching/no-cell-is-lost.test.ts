import { describe, expect, test } from "vitest";
import { targetFields } from "@/lib/intake/matching/target-fields";
import { translator } from "@/lib/intake/matching/translate-row";
import type { SourceRow } from "@/lib/intake/tables/source-row";
import { guess, setting } from "./full-setting";
import { odd } from "./odd-cells";

/** Whole numbers by Marsaglia's xorshift32, so that every run sees the same rows. */
function chance(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

/** A row may be short, long, or have cells of any kind in any place. */
function anyRow(pick: (below: number) => number, columns: number): SourceRow {
  const length = pick(12) === 0 ? pick(columns + 3) : columns;
  const cells = Array.from({ length }, () => odd[pick(odd.length)] ?? "");
  if (pick(4) > 0) return { row: 2, cells };
  const kinds = ["number", "day", "error"] as const;
  const kind = kinds[pick(3)] ?? "number";
  const place = pick(columns);
  return {
    row: 2,
    cells,
    marks: new Map([
      [
        place,
        kind === "day" ? { kind, stored: "45717", shown: undefined } : { kind, stored: odd[pick(odd.length)] ?? "" },
      ],
    ]),
  };
}

describe.each(["jobs", "units", "part-lines", "readings"] as const)("every filled cell of %s", (kind) => {
  const fields = targetFields(kind);
  const header = fields.map(({ target }) => `Their ${target}`);
  const base = guess(["a"], [], { kind }).matching;

  test.each([1, 2, 3])("is taken, noted, or a problem, whatever it holds (seed %i)", (seed) => {
    const pick = chance(seed * 7919);
    const fates = { rows: 0, held: 0, refused: 0 };
    const orders = ["day first", "month first", "year first"] as const;
    for (let round = 0; round < 40; round++) {
      const columns = fields.map(({ target }, place) => ({
        source: header[place] ?? "",
        target: pick(3) === 0 ? target : undefined,
      }));
      const words = { status: { "*": "closed" }, payer: { "*": "customer" }, cause: { "*": "component" } };
      const translate = translator(
        {
          ...base,
          columns,
          dateOrder: orders[pick(3)] ?? "year first",
          decimalMark: pick(2) === 0 ? "." : ",",
          ...(kind === "jobs" && { words }),
        },
        header,
        setting,
      );
      for (let count = 0; count < 25; count++) {
        const row = anyRow(pick, header.length);
        const translation = translate(row);
        fates[translation.kind]++;
        if (translation.kind === "held")
          expect(translation.problems.every(({ problem, fix }) => problem !== "" && fix !== "")).toBe(true);
        if (translation.kind !== "rows") continue;
        for (const [place, { source, target }] of columns.entries()) {
          const raw = (row.cells[place] ?? "").trim();
          if (target === undefined || raw === "") continue;
          const noted = translation.notes.some((note) => note.source === source);
          const taken = translation.rows.some(({ cells }) => cells[target.replace("part-lines.", "")]?.trim() === raw);
          if (!noted && !taken)
            throw new Error(
              `lost: ${target} ${JSON.stringify(raw.slice(0, 80))} ${JSON.stringify(translation).slice(0, 500)}`,
            );
        }
      }
    }
    expect(fates.held + fates.rows).toBeGreaterThan(500);
    expect(fates.held).toBeGreaterThan(50);
    expect(fates.rows).toBeGreaterThan(5);
  });
});

test("guessing does not throw, whatever header and cells are", () => {
  const pick = chance(4711);
  for (let round = 0; round < 30; round++) {
    const header = Array.from({ length: 1 + pick(12) }, () => odd[pick(odd.length)] ?? "");
    const rows = Array.from({ length: pick(8) }, () => anyRow(pick, header.length).cells);
    const found = guess(header, rows);
    expect(found.columns.length).toBe(header.length);
    expect(() => translator(found.matching, header, setting)).not.toThrow();
  }
});
