import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import { addDays } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import { formatPlainDay } from "@/lib/format/format-day";
import type { AskedComparison, ReadGroups } from "./read-groups";

/** One group from a day on, against itself before that day. */
export function sidesOfDay(values: AddressValues, { question, cells }: AskedComparison): ReadGroups {
  const address = new AddressReader({ on: values.on }, ["on"]);
  const on = address.dayOf("on");
  const read = { notices: address.notices, second: on };
  if (on === undefined) return { ...read, notTwo: noDay };
  const day = dayNumber(on);
  if (day >= question.until || (question.from !== undefined && day <= question.from)) {
    const last = formatPlainDay(addDays(dayFromNumber(question.until), -1));
    return {
      ...read,
      notTwo: {
        finding: `${formatPlainDay(on)} does not part the days of this view`,
        wayOn: `They ${question.from === undefined ? "" : `begin on ${formatPlainDay(dayFromNumber(question.from))} and `}end on ${last}; choose a day between.`,
      },
    };
  }
  return {
    ...read,
    groups: [
      { name: `the time from ${formatPlainDay(on)} on`, cells, question: { ...question, from: day } },
      { name: "the time before", cells, question: { ...question, until: day } },
    ],
  };
}

const noDay = {
  finding: "before and after which day?",
  wayOn: "Choose the day from which something was different, such as the first day of a changed part.",
};
