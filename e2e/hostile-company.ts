import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { promisify } from "node:util";
import sharp from "sharp";
import { addDays, day } from "@/lib/calendar/day";
import { csvCell } from "@/synthetic-data/csv-file";
import { makerPolicies } from "@/synthetic-data/policies";
import { bundled } from "./bundled.mjs";
import { hostile, hostileFileName } from "./hostile-words";
import { ownSite } from "./sites.mjs";

type Row = Readonly<Record<string, string | number>>;

/** Machines of the model besides the one whose every word is hostile: enough for it to be worth a look. */
const machines = 60;
const plate = { maker: hostile.maker, model: hostile.model, product_type: "front_load_washer" };
const trouble = {
  symptom: "will_not_drain",
  component: "planted_gland",
  cause: "component",
  technician: hostile.technician,
};

/** Loads a company's files whose every text would run if anything took it for more, under file names of the same kind. */
export async function loadHostileCompany(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-hostile-"));
  try {
    const picture = hostileFileName("picture");
    writeFileSync(
      join(folder, picture),
      await sharp({ create: { width: 40, height: 30, channels: 3, background: "#345" } })
        .jpeg()
        .toBuffer(),
    );
    const paths = Object.entries(tables(picture)).map(([name, rows]) => write(folder, `${name}.csv`, csv(rows)));
    paths.push(
      write(folder, "policies.json", JSON.stringify({ schema: "ohmsworth/policies/1", policies: [policy()] })),
    );
    await runProgram("app/commands/load.ts", paths);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What is expected of its parts, which the site would otherwise begin to work out when somebody asks for it. */
export async function forecastItsParts(): Promise<void> {
  await runProgram("app/commands/forecast.ts", []);
}

async function runProgram(program: string, words: readonly string[]): Promise<void> {
  const env = { ...process.env, DATABASE_URL: readFileSync(ownSite.note, "utf8") };
  await promisify(execFile)(process.execPath, [...bundled(program), ...words], {
    cwd: join(import.meta.dirname, ".."),
    env,
  });
}

function write(folder: string, name: string, text: string): string {
  const path = join(folder, hostileFileName(name));
  writeFileSync(path, text);
  return path;
}

function csv(rows: readonly Row[]): string {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return `${[columns, ...rows.map((row) => columns.map((column) => row[column] ?? ""))].map((cells) => cells.map(csvCell).join(",")).join("\r\n")}\r\n`;
}

function tables(picture: string): Readonly<Record<string, readonly Row[]>> {
  const job_number = hostile["job number"];
  const { maker, model } = plate;
  const serial = hostile.serial;
  const others = Array.from({ length: machines }, (_, n) => `PLANTED-${n}`);
  const visits = others.map((serial, n) => ({ serial, number: `PLANTED-${n}-1` }));
  return {
    components: [{ component: "planted_gland", name: hostile.component, product_types: "front_load_washer" }],
    units: [
      { ...plate, serial, made: "2026-05", sold_on: "2026-06-01", installed_on: "2026-06-08", territory: "US-OH" },
      ...others.map((serial) => ({ ...plate, serial, made: "2025-01", installed_on: "2025-02-10" })),
    ],
    jobs: [
      {
        ...plate,
        ...trouble,
        component: "drain_pump",
        job_number,
        serial,
        status: "closed",
        requested_on: "2026-10-14",
        completed_on: "2026-10-16",
        complaint: `\t${hostile.complaint}`,
        cause_note: hostile["cause note"],
        correction: hostile.correction,
        failure_mode: "winding_open",
        authorization_number: hostile.authorization,
        authorized_on: "2026-10-15",
        labour: "80.00",
      },
      { ...plate, ...trouble, job_number: "PLANTED-JOIN", requested_on: "2026-09-14", completed_on: "2026-09-16" },
      ...visits.map(({ serial, number }, n) => ({
        ...plate,
        ...trouble,
        ...(n % 4 === 0 ? {} : { component: "drain_pump" }),
        job_number: number,
        serial,
        requested_on: dayAfter("2026-02-02", 4 * n),
        completed_on: dayAfter("2026-02-04", 4 * n),
        labour: "80.00",
      })),
    ],
    "part-lines": [job_number, ...visits.map(({ number }) => number)].map((number) => ({
      job_number: number,
      line: 1,
      part_number: hostile["part number"],
      description: hostile["part description"],
      component: "planted_gland",
      unit_cost: "41.50",
      distributor: hostile.distributor,
      invoice_number: hostile.invoice,
      invoice_line: hostile["invoice line"],
      invoiced_on: "2026-04-01",
    })),
    readings: [
      {
        ...reading(job_number, 1, "pump_winding", "ohm"),
        power: "off",
        outcome: "number",
        value: "14.2",
        unit: hostile["unit of a reading"],
        point_a: hostile["test point"],
        point_b: hostile["other test point"],
        sheet_low: "10",
        sheet_high: "20",
        sheet_reference: hostile["page of a sheet"],
        note: hostile["note of a reading"],
      },
      ...[job_number, ...visits.map(({ number }) => number)].map((number) => ({
        ...reading(number, 2, "fault_code", "fault_code"),
        outcome: "code",
        word: hostile["fault code"],
      })),
    ],
    ranges: [
      {
        maker,
        model,
        check: "pump_winding",
        low: 1,
        high: 20,
        unit: hostile["unit of a range"],
        condition: hostile["condition of a range"],
        source: hostile["source of a range"],
        mark: "published",
      },
    ],
    photos: [{ job_number, subject: "receipt", file: picture, caption: `\r${hostile.caption}` }],
    parts: [
      {
        part_number: hostile["part number"],
        description: hostile["part description"],
        maker,
        component: "planted_gland",
        cost: "41.50",
        replaces: hostile["replaced part"],
        superseded_by: hostile["newer part"],
        effective_on: "2026-10-30",
      },
    ],
    contracts: [
      {
        maker,
        serial,
        contract_number: hostile.contract,
        plan: hostile.plan,
        holder: hostile.holder,
        starts_on: "2026-06-08",
        ends_on: "2029-06-07",
      },
    ],
    "unit-facts": [{ maker, serial, exchanged_on: "2026-06-08", exchanged_serial: hostile["exchanged serial"] }],
  };
}

function dayAfter(first: string, days: number): string {
  return addDays(day(first), days);
}

function reading(job_number: string, number: number, check: string, mode: string): Row {
  return { job_number, number, check, mode, power: "powered_panels_closed", technician: hostile.technician };
}

function policy() {
  const [example] = makerPolicies();
  if (example === undefined) throw new RangeError("makerPolicies: one at least expected");
  const sourceDocument = hostile.terms;
  return {
    ...example,
    key: "planted_household",
    version: 1,
    name: hostile.policy,
    maker: hostile.maker,
    payer: { kind: "maker", name: hostile.payer },
    effectiveFrom: day("2000-01-01"),
    effectiveTo: undefined,
    sourceDocument,
    approvedBy: hostile.approver,
    classes: [{ key: "planted", name: hostile.class, members: ["planted_gland", "drain_pump"] }],
    terms: [
      ...example.terms.filter(({ covers }) => covers.kind === "whole_unit"),
      { covers: { kind: "class", class: "planted" }, pays: ["parts"], term: { n: 5, unit: "year" } },
    ],
    campaigns: [
      {
        key: "planted",
        name: hostile.campaign,
        serials: [{ from: "PLANTED-0", to: "PLANTED-9" }],
        component: "planted_gland",
        pays: ["parts"],
        sourceDocument: hostile.bulletin,
      },
    ],
    pay: {
      ...example.pay,
      labour: {
        kind: "schedule",
        jobClasses: [{ name: hostile["labour class"], components: ["planted_gland", "drain_pump"], cents: 9000 }],
        otherwiseCents: 6500,
      },
    },
  };
}
