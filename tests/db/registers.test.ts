import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadComponentLife } from "@/app/repeats/load-component-life";
import { readOnly } from "@/db/client";
import { addDays, day } from "@/lib/calendar/day";
import { csv, fileFolder, type Row, shopDocument, startAfresh } from "./intake-files";

// Two open field registers go in as units and closed jobs, and come out of the path that the Repeats page takes.
// Sources: valve seats, Nelson & Doganaksoy (1989) and Nelson (1995); bearing cages, Abernethy et al. (1983),
// AFWAL-TR-83-2079. Days of the first and hours of the second are counted as days in service.

const start = day("2001-01-01");
const files = fileFolder();
const today = day("2026-01-01");

function rowsOf(name: string): string[][] {
  const text = readFileSync(new URL(`../reference/data/${name}.csv`, import.meta.url), "utf8");
  return text
    .split(/\r?\n/)
    .filter((line) => line !== "" && !line.startsWith("#"))
    .slice(1)
    .map((line) => line.split(",").map((cell) => cell.trim()));
}

const register = (serial: string, model: string, retiredAfter: number): Row => ({
  maker: "Open Register",
  model,
  product_type: "other_equipment",
  serial,
  installed_on: start,
  retired_on: addDays(start, retiredAfter),
});

const failure = (number: string, serial: string, model: string, component: string, after: number): Row => ({
  job_number: number,
  maker: "Open Register",
  model,
  serial,
  requested_on: addDays(start, after),
  completed_on: addDays(start, after),
  component,
  cause: "component",
});

function valveSeats(): { units: Row[]; jobs: Row[] } {
  const rows = rowsOf("valve_seat").map(([id = "", time = "", status = ""]) => ({
    id,
    time: Number(time),
    failed: status === "1",
  }));
  return {
    units: rows.filter((row) => !row.failed).map(({ id, time }) => register(`ENGINE${id}`, "ENGINE", time)),
    jobs: rows
      .filter((row) => row.failed)
      .map(({ id, time }, index) => failure(`VS-${index}`, `ENGINE${id}`, "ENGINE", "valve_seat", time)),
  };
}

function bearingCages(): { units: Row[]; jobs: Row[] } {
  const units: Row[] = [];
  const jobs: Row[] = [];
  for (const [hours = "", status = "", count = ""] of rowsOf("bearing_cage")) {
    for (let index = 0; index < Number(count); index++) {
      const serial = `CAGE${units.length}`;
      units.push(register(serial, "CAGE", Number(hours)));
      if (status === "1") jobs.push(failure(`BC-${jobs.length}`, serial, "CAGE", "bearing_cage", Number(hours)));
    }
  }
  return { units, jobs };
}

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify({ ...shopDocument, recordsFrom: null }));
  const words = [
    { component: "valve_seat", name: "Valve seat", product_types: "other_equipment" },
    { component: "bearing_cage", name: "Bearing cage", product_types: "other_equipment" },
  ];
  for (const rows of [words, valveSeats().units, bearingCages().units, valveSeats().jobs, bearingCages().jobs]) {
    expect(await files.load(csv(rows))).toMatchObject({ kind: "added" });
  }
});
afterAll(files.remove);

async function lifeOf(component: string, model: string) {
  const view = await readOnly((db) => loadComponentLife(db, component, { model }, today));
  if (view.kind !== "life") throw new Error(`no life for ${component}: ${view.kind}`);
  return view.life;
}

describe("valve seats of 41 engines", () => {
  // R 4.2.2, survival 3.5.3: tests/reference/survival.R, case "valve seats". An engine that fails on its last day is
  // written there a hair earlier, since R takes an end for one kind of event only.
  test("the mean cumulative function is that of R at every age", async () => {
    const { recurrence } = await lifeOf("valve_seat", "ENGINE");
    if (recurrence.kind !== "curve") throw new Error(`no curve: ${recurrence.kind}`);
    expect(recurrence.units).toBe(41);
    expect(recurrence.steps.reduce((sum, step) => sum + step.events, 0)).toBe(48);
    const fromR = readFileSync(new URL("../reference/survival-from-r.csv", import.meta.url), "utf8")
      .split("\n")
      .filter((line) => line.startsWith('"valve seats","mean",'))
      .map((line) => line.split(","))
      .map(([, , age, mean]) => ({ age: Math.round(Number(age)), mean: Number(mean) }));
    expect(fromR.length).toBeGreaterThan(20);
    // Two of R's steps a hair apart are one day here; the later holds the day's whole mean.
    for (const [age, mean] of new Map(fromR.map((row) => [row.age, row.mean]))) {
      expect(recurrence.steps.findLast((step) => step.age <= age)?.mean, `age ${age}`).toBeCloseTo(mean, 9);
    }
  });
});

describe("1703 bearing cages, 6 failures", () => {
  // Case W02 of tests/reference/stat-cases.json: printed shape 2.035, scale 11792 (Abernethy et al.; SMRD, Meeker & Escobar).
  test("Weibull shape and scale by maximum likelihood", async () => {
    const { weibull, spells, failures } = await lifeOf("bearing_cage", "CAGE");
    expect(spells).toBe(1703);
    expect(failures).toBe(6);
    if (weibull.kind !== "fitted") throw new Error(`refused: ${weibull.reason}`);
    const printed = expectedOf("W02");
    expect(Math.abs(weibull.shape.value - printed("beta").value)).toBeLessThan(printed("beta").tolerance);
    expect(Math.abs(weibull.scale.value - printed("eta").value)).toBeLessThan(printed("eta").tolerance);
  });
});

function expectedOf(id: string) {
  const text = readFileSync(new URL("../reference/stat-cases.json", import.meta.url), "utf8");
  const { cases } = JSON.parse(text) as {
    cases: { id: string; expected: { quantity: string; value: number; tolerance: number }[] }[];
  };
  return (quantity: string) => {
    const found = cases.find((entry) => entry.id === id)?.expected.find((entry) => entry.quantity === quantity);
    if (found === undefined) throw new Error(`${id} has no ${quantity}`);
    return found;
  };
}
