import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { referenceTable } from "./read-table";

/** The day after the last one of the demo company: 2026-11-01. */
export const demoCutOff = 20758;

export interface DemoUnit {
  readonly type: string;
  readonly inService: number;
  readonly observedFrom: number;
  readonly retired: number | undefined;
  readonly failures: readonly { readonly component: string; readonly on: number }[];
}

/** The units of data/demo_lives.csv.gz, which demo-lives.ts made from the rows of the generator's files. */
export function demoUnits(): DemoUnit[] {
  return linesOf("data/demo_lives.csv.gz").map(
    ([type = "", inService = "", observedFrom = "", retired = "", failures = ""]) => ({
      type,
      inService: Number(inService),
      observedFrom: Number(observedFrom),
      retired: retired === "" ? undefined : Number(retired),
      failures: failures
        .split(" ")
        .filter((text) => text !== "")
        .map((text) => text.split("@"))
        .map(([component = "", on = ""]) => ({ component, on: Number(on) })),
    }),
  );
}

/** Product types that have a component. */
export function demoTypesOf(component: string): ReadonlySet<string> {
  const rows = referenceTable("data/demo_component_types.csv").filter((row) => row.component === component);
  return new Set(rows.map((row) => row.type ?? ""));
}

/** Each life of one component of one unit, a row of its own: cut unit by unit, with no count in between. */
export function demoLives(unit: DemoUnit, component: string): LifeRow[] {
  const end = Math.min(unit.retired ?? demoCutOff, demoCutOff);
  const seen = unit.failures
    .filter((failure) => failure.component === component)
    .map(({ on }) => on)
    .filter((on) => on >= unit.observedFrom && on < demoCutOff && on <= (unit.retired ?? on))
    .sort((a, b) => a - b);
  return [unit.inService, ...seen].flatMap((begin, index) => {
    const failedOn = seen[index];
    const stop = failedOn ?? end;
    if (stop < unit.observedFrom || (stop === begin && failedOn === undefined)) return [];
    const entry = unit.observedFrom > begin ? unit.observedFrom - begin - 0.5 : 0;
    return [{ entry, exit: stop - begin, event: failedOn !== undefined, count: 1 }];
  });
}

/** What demo-survival.R computed, by case and quantity: values by age, in R's order. */
export function demoFromR(): ReadonlyMap<
  string,
  ReadonlyMap<string, readonly { readonly age: number; readonly value: number }[]>
> {
  const cases = new Map<string, Map<string, { age: number; value: number }[]>>();
  for (const [name = "", quantity = "", age = "", value = ""] of linesOf("demo-from-r.csv.gz")) {
    const found = cases.get(name) ?? new Map<string, { age: number; value: number }[]>();
    cases.set(name, found);
    found.set(quantity, [...(found.get(quantity) ?? []), { age: Number(age), value: Number(value) }]);
  }
  return cases;
}

function linesOf(name: string): string[][] {
  const text = gunzipSync(readFileSync(fileURLToPath(new URL(name, import.meta.url)))).toString("utf8");
  const lines = text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  return lines.slice(1).map((line) => line.split(","));
}
