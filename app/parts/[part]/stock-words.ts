import type { MovementKind } from "@/lib/domain/stock";

export const kindWords: Readonly<Record<MovementKind, string>> = {
  receipt: "Received",
  use: "Used on a job",
  count: "Counted",
  return: "Brought back",
  scrap: "Scrapped",
  move: "Moved",
  reserve: "Put aside",
  release: "Set free",
};

/** Shelf or truck. */
export function placeName(place: string): string {
  return place === "" ? "Shelf" : `${place}’s truck`;
}
