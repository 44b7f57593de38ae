// Invented units kept one by one, and the counts made from them: what tests compare the counted answers with.
import type { ExposureCells, JobCell, RepeatedJob, UnitWindow } from "@/lib/failures/cells";
import { minimalStandard } from "../minimal-standard";

export interface MadeUnit {
  readonly unitId: string;
  readonly modelId: 1 | 2;
  readonly inServiceOn: number;
  readonly observedFrom: number;
  readonly retiredOn: number | undefined;
  readonly failures: readonly {
    readonly on: number;
    readonly component: "pump" | "board";
    readonly outside?: boolean;
  }[];
}

export const until = 4000;

export function makeUnits(count: number): MadeUnit[] {
  const next = minimalStandard(20260311);
  return Array.from({ length: count }, (_, index) => {
    const inServiceOn = Math.floor(next() * 3500);
    const retiredOn = next() < 0.3 ? inServiceOn + 1 + Math.floor(next() * 2500) : undefined;
    const observedFrom = Math.max(inServiceOn, 800);
    const failures = Array.from({ length: Math.floor(next() * 4) }, () => ({
      on: inServiceOn + Math.floor(next() * 3200),
      component: next() < 0.6 ? ("pump" as const) : ("board" as const),
      outside: next() < 0.2,
    }));
    return { unitId: `u${index}`, modelId: next() < 0.5 ? 1 : 2, inServiceOn, observedFrom, retiredOn, failures };
  }).filter((unit) => unit.retiredOn === undefined || unit.retiredOn > unit.observedFrom) as MadeUnit[];
}

export function cellsOf(units: readonly MadeUnit[]): ExposureCells {
  const windows: UnitWindow[] = units.map(({ modelId, inServiceOn, observedFrom, retiredOn }) => ({
    modelId,
    inServiceOn,
    observedFrom,
    retiredOn,
    units: 1,
  }));
  const rows = units.flatMap((unit) => unit.failures.map((failure) => ({ unit, failure })));
  const cell = ({ unit, failure }: (typeof rows)[number]): JobCell => ({
    modelId: unit.modelId,
    component: failure.component,
    symptom: undefined,
    cause: failure.outside ? "foreign_object" : "component",
    countedAs: failure.outside ? "call" : "failure",
    place: { inServiceOn: unit.inServiceOn, observedFrom: unit.observedFrom, retiredOn: unit.retiredOn },
    failedOn: failure.on,
    previousFailedOn: failure.outside ? undefined : previousOf(unit, failure),
    jobs: 1,
  });
  const repeated: RepeatedJob[] = rows
    .filter(({ unit }) => unit.failures.length > 1)
    .map((row) => ({ ...cell(row), unitId: row.unit.unitId, place: { ...row.unit } }));
  return {
    models: [
      { modelId: 1, number: "A", maker: "One", productType: "dishwasher" },
      { modelId: 2, number: "B", maker: "Two", productType: "refrigerator" },
    ],
    components: [
      { key: "pump", name: "Pump", productTypes: ["dishwasher"] },
      { key: "board", name: "Board", productTypes: ["dishwasher", "refrigerator"] },
    ],
    symptoms: [],
    windows,
    jobs: rows.map(cell),
    repeated,
    unplaced: [],
  };
}

/** The unit's latest earlier failure of the same component; of two on one day the later in the list follows the other. */
function previousOf(unit: MadeUnit, failure: MadeUnit["failures"][number]): number | undefined {
  const same = unit.failures.filter(({ component, outside }) => component === failure.component && !outside);
  const ordered = same
    .map((item, index) => ({ item, index }))
    .sort((a, b) => a.item.on - b.item.on || a.index - b.index);
  return ordered[ordered.findIndex(({ item }) => item === failure) - 1]?.item.on;
}
