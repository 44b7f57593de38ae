import { AddressReader, type AddressValues } from "@/app/_address/address-reader";

export const partShows = ["order", "not-counted", "enough"] as const;
export type PartShow = (typeof partShows)[number];

export interface PartsFilter {
  readonly search: string | undefined;
  readonly component: string | undefined;
  readonly show: PartShow | undefined;
}

export interface PartsAddress {
  readonly filter: PartsFilter;
  readonly page: number;
  readonly inForce: AddressReader["inForce"];
  readonly notices: readonly string[];
}

/** What the address asks of the list of parts. */
export function readPartsAddress(values: AddressValues): PartsAddress {
  const reader = new AddressReader(values, ["q", "component", "show", "page"]);
  const page = reader.text("page") ?? "1";
  return {
    filter: {
      search: reader.text("q"),
      component: reader.text("component"),
      show: reader.oneOf("show", partShows, `Choose ${partShows.join(", ")}.`),
    },
    page: /^[1-9]\d{0,4}$/.test(page) ? Number(page) : 1,
    inForce: reader.inForce.filter(({ name }) => name !== "page"),
    notices: reader.notices,
  };
}

export function partsHref(inForce: PartsAddress["inForce"], page: number, path = "/parts"): string {
  const query = new URLSearchParams(inForce.map(({ name, value }) => [name, value]));
  if (page > 1) query.set("page", String(page));
  const text = query.toString();
  return text === "" ? path : `${path}?${text}`;
}

/** The page of one part. */
export function partHref(partKey: string): string {
  return `/parts/${encodeURIComponent(partKey)}`;
}
