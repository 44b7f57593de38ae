import type { Decision } from "./guess-date-order";
import { plainHeader } from "./header-similarity";
import type { LabourUnit } from "./matching";
import { readLooseNumber } from "./read-loose-number";

/** Whether a labour column holds hours, minutes or money: by its header, then by its values; asked where neither tells. */
export function guessLabourUnit(
  header: string,
  values: readonly string[],
  decimalMark: "." | ",",
): Decision<LabourUnit> {
  const named = byHeader(header);
  if (named !== undefined) return { value: named, reason: `The header "${header.trim()}" says so.` };
  const numbers = values.map((value) => readLooseNumber(value, decimalMark));
  const signed = numbers.filter(({ currency }) => currency !== "").length;
  if (signed > 0) return { value: "money", reason: `${signed} of ${values.length} values carry a currency.` };
  const amounts = numbers
    .flatMap(({ reading }) => (reading.kind === "taken" && reading.text !== "" ? [Number(reading.text)] : []))
    .filter((value) => value > 0);
  return byValues(amounts);
}

function byHeader(header: string): LabourUnit | undefined {
  const words = new Set(plainHeader(header));
  const has = (...some: readonly string[]) => some.some((word) => words.has(word));
  if (has("hours", "hour", "stunden", "heures", "horas", "ore", "uren")) return "hours";
  if (has("minutes", "minute", "minuten", "minutos", "minuti")) return "minutes";
  if (
    /[$€£]/.test(header) ||
    has("charge", "amount", "cost", "price", "fee", "total", "usd", "eur", "kosten", "lohnkosten")
  )
    return "money";
  return undefined;
}

function byValues(amounts: readonly number[]): Decision<LabourUnit> {
  const question = "Is labour in hours, in minutes or in money?";
  if (amounts.length < 5) return { question, reason: `Only ${amounts.length} values are filled in, too few to tell.` };
  const most = Math.max(...amounts);
  const quarters = amounts.filter((value) => !Number.isInteger(value) && Number.isInteger(4 * value)).length;
  const tenths = amounts.filter(
    (value) => !Number.isInteger(value) && Number.isInteger(Math.round(1000 * value) / 100),
  ).length;
  const odd = amounts.filter(
    (value) => !Number.isInteger(4 * value) && !Number.isInteger(Math.round(1000 * value) / 100),
  ).length;
  if (most <= 12 && quarters + tenths > 0 && odd === 0)
    return {
      value: "hours",
      reason: `Hours: all of ${amounts.length} values are ${most} or less, and ${Math.max(quarters, tenths)} are quarters or tenths.`,
    };
  if (odd > 0 && most > 24)
    return {
      value: "money",
      reason: `Money: ${odd} of ${amounts.length} values have cents that are no quarter or tenth of an hour.`,
    };
  const whole = amounts.every(Number.isInteger);
  const uneven = amounts.filter((value) => value % 5 !== 0).length;
  if (whole && most > 24 && most <= 600 && uneven >= amounts.length / 4)
    return {
      value: "minutes",
      reason: `Minutes: all of ${amounts.length} values are whole, up to ${most}, and ${uneven} are no multiple of five.`,
    };
  return { question, reason: `The values run up to ${most}, which can be more than one of the three.` };
}
