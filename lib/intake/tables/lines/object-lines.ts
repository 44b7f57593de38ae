import { createReadStream } from "node:fs";
import { decodeBytes } from "../decode-bytes";
import type { SourceItem } from "../source-row";
import type { Encoding } from "../table-form";
import { type ObjectReading, parseObject } from "./parse-object";

export interface ObjectLine {
  readonly row: number;
  readonly raw: string;
  readonly reading: ObjectReading;
}

const longestLine = 4_000_000;

/** Every line of a JSON Lines file that is not blank. */
export async function* objectLines(path: string, encoding: Encoding): AsyncGenerator<ObjectLine | Ending> {
  let row = 0;
  let left = "";
  for await (const text of decodeBytes(createReadStream(path, { highWaterMark: 1 << 18 }), encoding)) {
    const lines = (left + text).split("\n");
    left = lines.pop() ?? "";
    for (const line of lines) {
      row++;
      if (line.trim() !== "") yield lineOf(row, line);
    }
    if (left.length > longestLine) {
      yield tooLong(row + 1);
      return;
    }
  }
  if (left.trim() !== "") yield lineOf(row + 1, left);
}

type Ending = Extract<SourceItem, { readonly kind: "problem" }>;

function lineOf(row: number, line: string): ObjectLine {
  const raw = line.replace(/^\ufeff/, "").replace(/\r$/, "");
  return { row, raw, reading: parseObject(raw) };
}

function tooLong(row: number): Ending {
  const problem = `Line ${row} has more than ${longestLine / 1_000_000} million characters.`;
  return { kind: "problem", problem: { row, problem, fix: "Export the file again with one object a line." } };
}
