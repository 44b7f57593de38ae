import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import { type ClaimSort, claimSorts } from "@/db/queries/claim-list";
import { type ClaimGroup, claimGroupKeys } from "@/lib/claims/life/waiting";

/** The claims by whose move is next, and covered work that nobody has claimed. */
export type ClaimsTab = "unclaimed" | ClaimGroup;
export const claimsTabs: readonly ClaimsTab[] = ["unclaimed", ...claimGroupKeys];

export interface ClaimsAddress {
  readonly tab: ClaimsTab;
  readonly payer: string | undefined;
  readonly words: string | undefined;
  readonly sort: ClaimSort | undefined;
  /** Only what must be done within so many days. */
  readonly within: number | undefined;
  readonly page: number;
  readonly notices: readonly string[];
}

export function readClaimsAddress(values: AddressValues): ClaimsAddress {
  const address = new AddressReader(values, ["list", "payer", "words", "sort", "within", "page"]);
  const page = Number(address.text("page") ?? "1");
  return {
    tab: address.oneOf("list", claimsTabs, `Choose from ${claimsTabs.join(", ")}.`) ?? "unclaimed",
    payer: address.text("payer"),
    words: address.text("words"),
    sort: address.oneOf("sort", claimSorts, `Choose from ${claimSorts.join(", ")}.`),
    within: address.dayCountOf("within"),
    page: Number.isSafeInteger(page) && page >= 1 && page <= 100_000 ? page : 1,
    notices: address.notices,
  };
}

/** The same list with something changed; what is undefined falls away. It opens at its first page unless one is named. */
export function claimsHref({ tab, payer, words, sort, within, page }: Partial<Omit<ClaimsAddress, "notices">>): string {
  const query = new URLSearchParams();
  const set = (name: string, value: string | number | undefined) =>
    value !== undefined && query.set(name, String(value));
  set("list", tab === "unclaimed" ? undefined : tab);
  set("payer", payer);
  set("words", words);
  set("within", within);
  set("sort", sort);
  set("page", page === 1 ? undefined : page);
  return query.size === 0 ? "/claims" : `/claims?${query}`;
}
