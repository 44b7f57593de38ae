import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import type { JobFilter } from "@/db/queries/job-list";
import { causeKeys } from "@/lib/domain/cause";
import { payerKinds } from "@/lib/domain/job";
import { productTypeKeys } from "@/lib/domain/product-type";
import { ageBands } from "@/lib/failures/rate-question";

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
  const address = new AddressReader(values, names);
  const oneOf = <T extends string>(name: string, allowed: readonly T[]) =>
    address.oneOf(name, allowed, `Choose from ${allowed.join(", ")}.`);
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
  const page = Number(address.text("page") ?? "1");
  return {
    filter: {
      maker: address.text("make"),
      model: address.text("model"),
      productType: oneOf("type", productTypeKeys),
      component: address.text("component"),
      symptom: address.text("symptom"),
      cause: oneOf("cause", causeKeys) ?? (count !== undefined && counted === undefined ? count : undefined),
      technician: address.text("tech"),
      payer: oneOf("payer", payerKinds),
      from: address.dayOf("from"),
      to: address.dayOf("to"),
      ageDays: band && { from: band.fromDay, until: band.untilDay },
      counted: counted ?? (count === undefined ? undefined : "calls"),
      words: address.text("words"),
    },
    page: Number.isSafeInteger(page) && page >= 1 && page <= 1_000_000 ? page : 1,
    inForce: address.inForce.filter(({ name }) => name !== "page"),
    notices: address.notices,
  };
}
