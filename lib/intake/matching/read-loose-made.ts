import { asItStands, held, type LooseReading, leftBlank, rewritten } from "./loose-reading";
import { monthNumber } from "./month-names";
import { type DaySetting, readLooseDay } from "./read-loose-day";

/** When something was made: a year, a month or a day, each as exports write it. */
export function readLooseMade(text: string, setting: DaySetting): LooseReading {
  const plain = text.trim();
  if (/^(?:19[1-9]\d|20\d\d|21\d\d)(?:-(?:0[1-9]|1[0-2]))?$/.test(plain)) return asItStands(plain);
  if (/^(?:0{1,4}|1900|1901|1899|9999)$/.test(plain))
    return leftBlank(`${plain} stands for "no year" in the program that wrote it.`);
  if (/^\d{4}$/.test(plain))
    return held(
      "is no year in which an appliance that is serviced was made",
      "Look it up in the source, or leave it blank if it is unknown.",
    );
  const year = /^(\d{4})(?:[.,]0+|\.)$/.exec(plain);
  if (year !== null) return rewritten(year[1] ?? "", "The year alone.");
  const numeric = /^(\d{4})[-/. ](\d{1,2})$/.exec(plain);
  if (numeric !== null) return month(numeric[1], numeric[2]) ?? readLooseDay(text, setting);
  const monthFirst = /^(\d{1,2})[-/. ](\d{4})$/.exec(plain);
  if (monthFirst !== null) return month(monthFirst[2], monthFirst[1]) ?? readLooseDay(text, setting);
  const named = /^(\p{L}{3,10})\.?[-/ ,]*(\d{4})$/u.exec(plain);
  if (named !== null) return month(named[2], monthNumber(named[1])) ?? readLooseDay(text, setting);
  return readLooseDay(text, setting);
}

function month(year: string | undefined, number: string | undefined): LooseReading | undefined {
  if (year === undefined || number === undefined || Number(number) < 1 || Number(number) > 12) return undefined;
  return rewritten(`${year}-${number.padStart(2, "0")}`, "A month.");
}
