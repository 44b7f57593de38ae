import { countedUnits } from "@/lib/calendar/term";
import type { FieldKind } from "./form-field";

/** What a field's text means in the document; text that cannot be read stays text, so that nothing typed is lost. */
export function valueOfText(kind: FieldKind, texts: readonly string[]): unknown {
  const text = (texts[0] ?? "").trim();
  if (kind === "set") return texts.filter((one) => one !== "");
  if (kind === "flag") return text !== "";
  if (kind === "list") return words(text);
  if (kind === "serials") return words(text).map(rangeOf);
  if (text === "") return undefined;
  switch (kind) {
    case "term":
      return termOf(text);
    case "money":
      return /^\d+(\.\d{1,2})?$/.test(text) ? Math.round(100 * Number(text)) : text;
    case "number":
      return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;
    case "answer":
      return text === "yes" ? true : text === "no" ? false : text;
    case "covers":
      return text.startsWith("class:") ? { kind: "class", class: text.slice(6) } : { kind: text };
    default:
      return text;
  }
}

/** The same the other way round. */
export function textsOfValue(kind: FieldKind, value: unknown): readonly string[] {
  if (value === undefined || value === null) return [];
  if (Array.isArray(value)) {
    if (kind === "set") return value.map(String);
    return [
      value
        .map((item) => (kind === "serials" ? textOfRange(item) : String(item)))
        .join(kind === "serials" ? "\n" : ", "),
    ];
  }
  if (kind === "flag") return value === true ? ["yes"] : [];
  if (kind === "answer") return [value === true ? "yes" : value === false ? "no" : String(value)];
  if (kind === "money" && typeof value === "number")
    return [`${Math.floor(value / 100)}.${String(value % 100).padStart(2, "0")}`];
  if (typeof value !== "object") return [String(value)];
  const { n, unit, kind: covers, class: key } = value as Readonly<Record<string, unknown>>; // an object, found just now
  if (covers !== undefined) return [covers === "class" ? `class:${String(key)}` : String(covers)];
  return [unit === "lifetime" ? "lifetime" : `${String(n)} ${String(unit)}${n === 1 ? "" : "s"}`];
}

/** "12 months" as the terms write it; never another unit. */
function termOf(text: string): unknown {
  if (/^lifetime$/i.test(text)) return { unit: "lifetime" };
  const read = /^(\d{1,4})\s*([a-z]+?)s?$/i.exec(text);
  const unit = countedUnits.find((known) => known === read?.[2]?.toLowerCase());
  return read === null || unit === undefined ? text : { n: Number(read[1]), unit };
}

function words(text: string): readonly string[] {
  return text
    .split(/[,\n]/)
    .map((word) => word.trim())
    .filter((word) => word !== "");
}

function rangeOf(text: string): unknown {
  const [from, to = from] = text.split(/\s+to\s+/i);
  return { from, to };
}

function textOfRange(range: unknown): string {
  const { from, to } = range as { from?: unknown; to?: unknown }; // made by rangeOf, or parsed
  return from === to ? String(from) : `${String(from)} to ${String(to)}`;
}
