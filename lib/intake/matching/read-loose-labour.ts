import { asItStands, held, type LooseReading, rewritten } from "./loose-reading";
import { readLooseNumber } from "./read-loose-number";

const longestJobMinutes = 24 * 60;

/** Working time as whole minutes: 1:30, 1h 30m, 1.5 hours, or a bare number in the unit of the file. */
export function readLooseLabour(text: string, unit: "hours" | "minutes", decimalMark: "." | ","): LooseReading {
  const plain = text.trim();
  const clock =
    /^(\d{1,3})[:h]\s?([0-5]\d)(?::\d{2})?\s*m?(?:in)?$/i.exec(plain) ??
    /^(\d{1,2})\s*h(?:rs?|ours?)?\s*(\d{1,2})\s*m(?:in(?:utes)?)?$/i.exec(plain);
  if (clock !== null) return minutes(60 * Number(clock[1]) + Number(clock[2]), "Hours and minutes.");
  const { reading, unit: suffix, currency } = readLooseNumber(plain, decimalMark);
  if (reading.kind !== "taken" || reading.text === "") return reading;
  if (currency !== "")
    return held(
      "is an amount of money, and this column holds working time",
      "Say under Match columns that labour is in money, or write the time.",
    );
  const stated = suffix === "" ? unit : unitOf(suffix);
  if (stated === undefined)
    return held("has a unit that is no time", "Write hours or minutes, such as 1.5 h or 90 min.");
  const value = Number(reading.text);
  if (stated === "hours") return minutes(Math.round(60 * value), `${value} hours.`);
  if (!Number.isInteger(value)) return minutes(Math.round(value), "Rounded to whole minutes.");
  return suffix === "" && String(value) === plain ? (within(value) ?? asItStands(plain)) : minutes(value, "Minutes.");
}

function unitOf(suffix: string): "hours" | "minutes" | undefined {
  const plain = suffix.replace(/\.$/, "");
  if (/^(?:h|hr|hrs|hour|hours|std|stunden?|heures?|horas?|ore|uur|uren)$/.test(plain)) return "hours";
  return /^(?:m|min|mins|minutes?|minuten|minutos|minuti|')$/.test(plain) ? "minutes" : undefined;
}

function minutes(count: number, note: string): LooseReading {
  return within(count) ?? rewritten(String(count), note);
}

function within(count: number): LooseReading | undefined {
  if (count < 0) return held("is negative", "Write the working time, 0 or more, or leave it blank.");
  if (count <= longestJobMinutes) return undefined;
  return held(
    `would be ${Math.round(count / 6) / 10} hours of work on one job`,
    "Write the unit behind the number, such as 90 min or 1.5 h, or correct it.",
  );
}
