import type { JobFilter } from "@/db/queries/job-list";
import { readDay } from "@/lib/calendar/day";
import { causeKeys } from "@/lib/domain/cause";
import { payerKinds } from "@/lib/domain/job";
import { productTypeKeys } from "@/lib/domain/product-type";
import { ageBands } from "@/lib/failures/rate-question";

export type AddressValues = Readonly<Record<string, string | readonly string[] | undefined>>;

export interface JobAddress {
  readonly filter: JobFilter;
  /** Page of the list, from 1. */
  readonly page: number;
  /** The filters in force, as the address has them. */
  readonly inForce: readonly { readonly name: string; readonly value: string }[];
  readonly notices: readonly string[];
}

const names = [
  "make",
  "model",
  "type",
  "component",
  "symptom",
  "cause",
  "tech",
  "payer",
  "from",
  "to",
  "age",
  "count",
  "words",
  "page",
] as const;

/** The same filter names as on Repeats. What cannot be read is left out with a notice. */
export function readJobFilter(values: AddressValues): JobAddress {
  const notices: string[] = [];
  const text = (name: string): string | undefined => {
    const value = values[name];
    const last = (typeof value === "string" ? value : value?.at(-1))?.trim();
    return last === "" ? undefined : last?.slice(0, 200);
  };
  const leftOut = (name: string, value: string, hint: string) => {
    notices.push(`“${value.slice(0, 40)}” is not a ${name} that we know; it was left out. ${hint}`);
    return undefined;
  };
  const oneOf = <T extends string>(name: string, allowed: readonly T[]): T | undefined => {
    const value = text(name);
    if (value === undefined) return undefined;
    return allowed.find((word) => word === value) ?? leftOut(name, value, `Choose from ${allowed.join(", ")}.`);
  };
  const dayOf = (name: "from" | "to") => {
    const value = text(name);
    return value === undefined ? undefined : (readDay(value) ?? leftOut("day", value, "Write it as 2025-03-31."));
  };
  for (const name of Object.keys(values)) {
    if (!names.some((known) => known === name))
      notices.push(`“${name.slice(0, 40)}” is not one of our filters; it was left out.`);
  }
  const band = ageBands.find(
    (candidate) =>
      candidate.key ===
      oneOf(
        "age",
        ageBands.map(({ key }) => key),
      ),
  );
  const count = oneOf("count", ["failures", "calls", ...causeKeys]);
  const counted = count === "failures" || count === "calls" ? count : undefined;
  const page = Number(text("page") ?? "1");
  return {
    filter: {
      maker: text("make"),
      model: text("model"),
      productType: oneOf("type", productTypeKeys),
      component: text("component"),
      symptom: text("symptom"),
      cause: oneOf("cause", causeKeys) ?? (count !== undefined && counted === undefined ? count : undefined),
      technician: text("tech"),
      payer: oneOf("payer", payerKinds),
      from: dayOf("from"),
      to: dayOf("to"),
      ageDays: band && { from: band.fromDay, until: band.untilDay },
      counted: counted ?? (count === undefined ? undefined : "calls"),
      words: text("words"),
    },
    page: Number.isSafeInteger(page) && page >= 1 && page <= 1_000_000 ? page : 1,
    inForce: names.flatMap((name) => {
      const value = text(name);
      return name === "page" || value === undefined ? [] : [{ name, value }];
    }),
    notices,
  };
}
