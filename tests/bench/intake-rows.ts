// Invented files for the bench of the intake, the same on every run: closed jobs of 25 columns, a part line for each.
import { createWriteStream } from "node:fs";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { components } from "@/lib/domain/components";
import { productTypeKeys } from "@/lib/domain/product-type";
import { symptoms } from "@/lib/domain/symptoms";
import type { Matching } from "@/lib/intake/matching/matching";
import { csvCell } from "@/synthetic-data/csv-file";
import { minimalStandard } from "../minimal-standard";

export const jobColumns =
  "job_number maker model product_type serial requested_on first_visit_on diagnosed_on parts_ordered_on parts_received_on completed_on complaint cause_note correction symptom component failure_mode cause visits technician payer labour_minutes labour trip authorization_number".split(
    " ",
  );
export const partColumns =
  "job_number line part_number description component role quantity unit_cost distributor invoice_number invoiced_on".split(
    " ",
  );

/** What both say in somebody's own export, a row a part line, under names of its own. */
const exported: Readonly<Record<string, string>> = {
  ...Object.fromEntries(jobColumns.map((column) => [`Work ${column.replaceAll("_", " ")}`, column])),
  ...Object.fromEntries(
    ["part_number", "description", "role", "quantity", "unit_cost", "invoice_number"].map((column) => [
      `Item ${column.replaceAll("_", " ")}`,
      `part-lines.${column}`,
    ]),
  ),
};

export const exportMatching: Matching = {
  kind: "jobs",
  rowIs: "one part line",
  columns: Object.entries(exported).map(([source, target]) => ({ source, target })),
  dateOrder: "year first",
  decimalMark: ".",
  labourUnit: "minutes",
  words: {},
  constants: {},
};

interface Spread {
  readonly rows: number;
  /** Number of the first job, so that a later file can overlap an earlier one. */
  readonly from?: number;
}

const models = 300;
const jobsAUnit = 1_000_000 / 367_000;
const firstDay = Date.UTC(2015, 0, 1) / 86_400_000;
const complaints = ["Water stays in the tub", '"Loud bang", then nothing', "Stops in the middle"];
const corrections = ["Fitted a new one", "Cleaned, adjusted", "Wiring secured"];

/** Types that have both components and symptoms. */
const types = productTypeKeys
  .map((type) => ({
    type,
    components: components.filter((each) => each.productTypes.includes(type)).map(({ key }) => key),
    symptoms: symptoms.filter((each) => each.productTypes.includes(type)).map(({ key }) => key),
  }))
  .filter((each) => each.components.length > 0 && each.symptoms.length > 0);

export async function writeJobs(path: string, spread: Spread): Promise<void> {
  await write(path, jobColumns, spread, jobLine);
}

export async function writePartLines(path: string, spread: Spread): Promise<void> {
  await write(path, partColumns, spread, partLine);
}

export async function writeExport(path: string, spread: Spread): Promise<void> {
  await write(path, Object.keys(exported), spread, (job) => {
    const [, , number, description, , role, quantity, cost, , invoice] = partLine(job).split(",");
    return `${jobLine(job).trimEnd()},${[number, description, role, quantity, cost, invoice].join(",")}\r\n`;
  });
}

async function write(
  path: string,
  columns: readonly string[],
  { rows, from = 0 }: Spread,
  line: (job: number) => string,
): Promise<void> {
  function* lines() {
    let text = `${columns.join(",")}\r\n`;
    for (let job = from; job < from + rows; job++) {
      text += line(job);
      if (text.length < 1 << 18) continue;
      yield text;
      text = "";
    }
    yield text;
  }
  await pipeline(Readable.from(lines()), createWriteStream(path));
}

function jobLine(job: number): string {
  const draw = drawer(job);
  const { unit, model, kind, component } = plate(job);
  const opened = firstDay + Math.floor((job / 1_000_000) * 3_600) + Math.floor(draw() * 20);
  const visit = opened + 1 + Math.floor(draw() * 4);
  const done = visit + Math.floor(draw() * 9);
  const failed = draw() < 0.8;
  const symptom = kind.symptoms[Math.floor(draw() * kind.symptoms.length)] ?? "";
  return [
    `J-${String(job).padStart(8, "0")}`,
    `Bench Maker ${model % 20}`,
    `BM-${1000 + model}X`,
    kind.type,
    `SN${String(unit * 7919).padStart(11, "0")}`,
    dayText(opened),
    dayText(visit),
    dayText(visit),
    dayText(visit),
    dayText(done),
    dayText(done),
    csvCell(complaints[job % complaints.length] ?? ""),
    `Reading ${(draw() * 40).toFixed(1)} ohm`,
    csvCell(corrections[job % corrections.length] ?? ""),
    symptom,
    failed ? component : "",
    failed ? "winding_open" : "",
    failed ? "component" : "no_fault_found",
    String(1 + Math.floor(draw() * 3)),
    `Technician ${job % 40}`,
    job % 3 === 0 ? "maker" : "customer",
    String(20 + Math.floor(draw() * 100)),
    (40 + draw() * 200).toFixed(2),
    "35.00",
    job % 3 === 0 ? `AU${job}` : "",
  ]
    .join(",")
    .concat("\r\n");
}

function partLine(job: number): string {
  const draw = drawer(job);
  const { component } = plate(job);
  const part = 100 + (job % 5000);
  const cost = (5 + draw() * 150).toFixed(2);
  const invoiced = dayText(firstDay + Math.floor((job / 1_000_000) * 3_600));
  return `J-${String(job).padStart(8, "0")},1,P-${part},Part for the repair,${component},fitted,1,${cost},Main Street Supply,INV-${job >> 2},${invoiced}\r\n`;
}

/** Which unit the job is of, and so which model. */
function plate(job: number) {
  const unit = Math.floor((((job * 48_271) % 1_000_003) / 1_000_003) * Math.max(1, 1_000_000 / jobsAUnit));
  const model = unit % models;
  const kind = types[model % types.length] ?? { type: "dishwasher", components: ["drain_pump"], symptoms: ["leaks"] };
  return { unit, model, kind, component: kind.components[job % kind.components.length] ?? "" };
}

/** Numbers from 0 to 1 that depend on the job only. */
function drawer(job: number): () => number {
  return minimalStandard((job * 2_654_435_761 + 12_345) % 2_147_483_647);
}

const dayTexts = new Map<number, string>();

function dayText(day: number): string {
  const known = dayTexts.get(day) ?? new Date(day * 86_400_000).toISOString().slice(0, 10);
  dayTexts.set(day, known);
  return known;
}
