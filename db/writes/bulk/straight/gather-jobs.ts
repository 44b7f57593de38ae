// What the rows of a large first file of jobs say together: their units, models and words, each told by one row.
import type { StagedColumn } from "../../staging/staged-kind";
import type { BinaryRow } from "./binary-row";
import { ByteWords } from "./byte-words";
import { KeyHash } from "./key-hash";
import { KeyTable } from "./key-table";
import { NotStraight } from "./not-straight";
import { type Gatherer, putKey } from "./straight-reader";

/** Values that stand together in a row, with the first row in which they do. */
export interface GatheredWords {
  readonly row: number;
  readonly maker: string;
  readonly makerN: string;
  readonly model: string;
  readonly modelN: string;
  readonly productType: string | undefined;
  readonly component: string | undefined;
  readonly symptom: string | undefined;
}

const pairs = 1 << 16;
const jobWord = Buffer.from("job|");

export class JobGatherer implements Gatherer {
  readonly keyColumns = 2;
  readonly words: GatheredWords[] = [];
  /** Keys, first rows, and by unit the number of its model. */
  readonly units = new KeyTable();
  readonly unitRows: number[] = [];
  readonly unitModels: number[] = [];
  /** As the unit's first row gives them, and as they are compared; undefined for a job without one. */
  readonly serials: (string | undefined)[] = [];
  readonly serialsN: (string | undefined)[] = [];
  /** By its number: maker and model as they are compared. */
  readonly models = new ByteWords();
  readonly makers = new ByteWords();
  readonly #jobs = new KeyTable();
  readonly #types = new ByteWords();
  readonly #components = new ByteWords();
  readonly #symptoms = new ByteWords();
  readonly #together = new Map<number, Map<number, number>>();
  readonly #hash = new KeyHash();
  readonly #text = Buffer.allocUnsafe(2048);
  readonly #place: Readonly<Record<JobColumn, number>>;

  constructor(columns: readonly StagedColumn[]) {
    const place = (name: JobColumn) => {
      const found = columns.findIndex((column) => column.name === name);
      if (found < 0) throw new RangeError(`columns: lack ${name}`);
      return found;
    };
    this.#place = Object.fromEntries(jobColumns.map((name) => [name, place(name)])) as Record<JobColumn, number>; // every name has its place
  }

  keys(row: BinaryRow, number: number, out: Buffer, at: number): number {
    const { completed_on, job_number, serial_normalised } = this.#place;
    if (row.lengths[completed_on] === -1) throw new NotStraight("a job that was never completed");
    this.#hashOf(row, job_number);
    const job = { high: this.#hash.high, low: this.#hash.low };
    const known = this.#jobs.size;
    if (this.#jobs.add(job.high, job.low) < known) throw new NotStraight("two rows of one job");
    const model = this.#model(row, number);
    if (row.lengths[serial_normalised] === -1) this.#hashText([jobWord], row, [job_number]);
    else this.#hashText([], row, [this.#place.maker_n, serial_normalised]);
    this.#unit(row, number, model);
    let end = putKey(out, at, this.#hash);
    end = putKey(out, end, job);
    return end - at;
  }

  #model(row: BinaryRow, number: number): number {
    const place = this.#place;
    const maker = this.#word(this.makers, row, place.maker_n);
    const model = this.#word(this.models, row, place.model_n, maker);
    const type = this.#word(this.#types, row, place.product_type);
    const component = this.#word(this.#components, row, place.component);
    const symptom = this.#word(this.#symptoms, row, place.symptom);
    if (type >= pairs || component >= pairs || symptom >= pairs) throw new NotStraight("too many words");
    const outer = model * pairs + type;
    const inner = component * pairs + symptom;
    let beside = this.#together.get(outer);
    if (beside === undefined) {
      beside = new Map();
      this.#together.set(outer, beside);
    }
    const known = beside.get(inner);
    if (known !== undefined && number > (this.words[known]?.row ?? 0)) return model;
    if (known === undefined) beside.set(inner, this.words.length);
    this.words[known ?? this.words.length] = {
      row: number,
      maker: textOf(row, place.maker) ?? "",
      makerN: textOf(row, place.maker_n) ?? "",
      model: textOf(row, place.model) ?? "",
      modelN: textOf(row, place.model_n) ?? "",
      productType: textOf(row, place.product_type),
      component: textOf(row, place.component),
      symptom: textOf(row, place.symptom),
    };
    return model;
  }

  #unit(row: BinaryRow, number: number, model: number): void {
    const known = this.units.size;
    const unit = this.units.add(this.#hash.high, this.#hash.low);
    if (unit < known) {
      if (this.unitModels[unit] !== model) throw new NotStraight("a unit of two models");
      if (number > (this.unitRows[unit] ?? 0)) return; // rows that were asked about come after others
    }
    this.unitRows[unit] = number;
    this.unitModels[unit] = model;
    this.serials[unit] = textOf(row, this.#place.serial);
    this.serialsN[unit] = textOf(row, this.#place.serial_normalised);
  }

  /** @returns 0 for no value, else one more than the word's number */
  #word(words: ByteWords, row: BinaryRow, column: number, within = 0): number {
    const length = row.lengths[column] ?? -1;
    if (length < 0) return 0;
    const start = row.starts[column] ?? 0;
    const found = words.number(row.bytes, start, start + length, within);
    if (found === undefined) throw new NotStraight("two words of one hash");
    return found + 1;
  }

  #hashOf(row: BinaryRow, column: number): void {
    const start = row.starts[column] ?? 0;
    this.#hash.of(row.bytes, start, start + (row.lengths[column] ?? 0));
  }

  /** The hash of texts and columns, with "|" between columns. */
  #hashText(before: readonly Buffer[], row: BinaryRow, columns: readonly number[]): void {
    let at = 0;
    for (const text of before) at += text.copy(this.#text, at);
    for (const [index, column] of columns.entries()) {
      const length = row.lengths[column] ?? 0;
      if (at + length + 1 > this.#text.length) throw new NotStraight("a name of great length");
      if (index > 0) this.#text[at++] = 0x7c;
      const start = row.starts[column] ?? 0;
      at += row.bytes.copy(this.#text, at, start, start + length);
    }
    this.#hash.of(this.#text, 0, at);
  }
}

const jobColumns = [
  "maker",
  "maker_n",
  "model",
  "model_n",
  "product_type",
  "serial",
  "serial_normalised",
  "job_number",
  "completed_on",
  "component",
  "symptom",
] as const;
type JobColumn = (typeof jobColumns)[number];

function textOf(row: BinaryRow, column: number): string | undefined {
  const length = row.lengths[column] ?? -1;
  const start = row.starts[column] ?? 0;
  return length < 0 ? undefined : row.bytes.toString("utf8", start, start + length);
}
