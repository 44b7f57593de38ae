import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";
import { shop } from "../schema/shop";

export type Shop = Omit<typeof shop.$inferSelect, "batchId">;

/** Settings of a company that has not been set up: enough to show pages that say so. */
const unnamed: Shop = {
  only: true,
  name: "",
  currency: "USD" satisfies Currency,
  timeZone: "UTC",
  territory: "US",
  recordsFrom: null,
  madeGraceMonths: 3,
  repeatDays: 30,
  demo: false,
};

/** The company's own settings. */
export async function loadShop(db: Reader): Promise<Shop> {
  const [row] = await db.select().from(shop);
  return row ?? unnamed;
}
