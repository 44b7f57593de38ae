import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import type { LeakClass, UnclaimedFilter } from "@/db/queries/money-unclaimed";
import { leakKeys, leaks } from "@/lib/claims/leaks/leak";

export const leakClasses: readonly LeakClass[] = ["late", ...leakKeys];

export function leakName(leak: LeakClass): string {
  return leak === "late" ? "Covered, filing day passed" : leaks[leak];
}

export interface UnclaimedAddress {
  readonly filter: UnclaimedFilter;
  readonly page: number;
  readonly inForce: readonly { readonly name: string; readonly value: string }[];
  readonly notices: readonly string[];
}

const names = ["class", "payer", "component", "within", "from", "to", "page"] as const;

export function readUnclaimedAddress(values: AddressValues): UnclaimedAddress {
  const address = new AddressReader(values, names);
  const leak = address.oneOf("class", leakClasses, `Choose from ${leakClasses.join(", ")}.`);
  const page = Number(address.text("page") ?? "1");
  return {
    filter: {
      leak,
      payer: address.text("payer"),
      component: address.text("component"),
      within: address.dayCountOf("within"),
      from: address.dayOf("from"),
      to: address.dayOf("to"),
    },
    page: Number.isSafeInteger(page) && page >= 1 && page <= 100_000 ? page : 1,
    inForce: address.inForce.filter(({ name }) => name !== "page"),
    notices: address.notices,
  };
}

/** The same view at another page or with one filter changed. */
export function unclaimedHref(
  inForce: UnclaimedAddress["inForce"],
  changed: Readonly<Record<string, string | undefined>>,
  path = "/claims/unclaimed",
): string {
  const query = new URLSearchParams(inForce.map(({ name, value }) => [name, value]));
  for (const [name, value] of Object.entries(changed)) {
    if (value === undefined) query.delete(name);
    else query.set(name, value);
  }
  return query.size === 0 ? path : `${path}?${query}`;
}
