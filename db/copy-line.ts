import { copyField } from "./copy-field";

/** One row in COPY's text format, with its line end; null is a missing value, an empty text is an empty text. */
export function copyLine(values: readonly (string | number | bigint | boolean | null)[]): string {
  let line = "";
  for (const [place, value] of values.entries()) line += place === 0 ? copyField(value) : `\t${copyField(value)}`;
  return `${line}\n`;
}
