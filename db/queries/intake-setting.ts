import { civilDay } from "@/lib/calendar/civil-day";
import { type Day, day } from "@/lib/calendar/day";
import { failureModes } from "@/lib/domain/failure-modes";
import { checks } from "@/lib/evidence/checks";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import type { Reader } from "../database-types";
import { components, productTypes, symptoms } from "../schema/catalogue";
import { shop } from "../schema/shop";

/** What rows are read against; `shopKnown` is false where no company has been set up. */
export async function loadIntakeSetting(
  db: Reader,
  today: Day | undefined,
): Promise<IntakeSetting & { readonly shopKnown: boolean }> {
  const [company] = await db.select().from(shop);
  const types = await db.select({ key: productTypes.key }).from(productTypes);
  const parts = await db.select({ key: components.key }).from(components);
  const complaints = await db.select({ key: symptoms.key }).from(symptoms);
  return {
    catalogue: {
      productTypes: new Set(types.map(({ key }) => key)),
      components: new Set(parts.map(({ key }) => key)),
      symptoms: new Set(complaints.map(({ key }) => key)),
      failureModes: new Set(failureModes.map(({ key }) => key)),
      checks: new Map(
        checks.map((check) => [check.key, { modes: check.modes, findings: Object.keys(check.findings) }]),
      ),
    },
    currency: company?.currency ?? "USD",
    today: today ?? todayIn(company?.timeZone ?? "UTC"),
    shopKnown: company !== undefined,
  };
}

function todayIn(zone: string): Day {
  const now = new Date().toISOString();
  const here = civilDay(now, zone);
  return here.kind === "day" ? here.on : day(now.slice(0, 10));
}
