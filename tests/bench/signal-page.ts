// The page of a signal where there is none: copies of one company come in clumps, so that nothing in it stands out.
import { sql } from "drizzle-orm";
import { whatRowsSay } from "@/app/repeats/signals/[key]/what-rows-say";
import { currentRun } from "@/app/repeats/signals/current-run";
import { readOnly } from "@/db/client";
import { addDays, type Day } from "@/lib/calendar/day";
import type { ProductType } from "@/lib/domain/product-type";
import type { CellKey } from "@/lib/signals/signal-record";
import { ageBandCount } from "@/lib/signals/weeks";

/** Only the cost is asked, so every age is given the same rate. */
const ages = Array.from({ length: ageBandCount }, (_, band) => ({
  band,
  own: 1,
  ownUnitWeeks: 1000,
  others: 1,
  othersUnitWeeks: 1000,
}));

/** Everything that the page reads and reckons, of the component and model with most failures, as though they rose a year ago. */
export async function signalPage(asOf: Day): Promise<() => Promise<void>> {
  const [found] = await readOnly((db) =>
    db.rows<{ word: string; productType: ProductType; maker: string; model: string }>(sql`
      select j.component as word, m.product_type as "productType", k.name as maker, m.number as model
      from jobs j join units u using (unit_id) join models m using (model_id) join makers k on k.maker_id = m.maker_id
      where j.counted_as = 'failure' group by 1, 2, 3, 4 order by count(*) desc, 1, 4 limit 1`),
  );
  if (found === undefined) throw new Error("the invented company has failures");
  const cell: CellKey = { ...found, kind: "component", madeHalf: undefined };
  const from = addDays(asOf, -365);
  return async () => {
    await currentRun(undefined, "none");
    await whatRowsSay({ lead: { key: cell, ages, onsetWeek: 1 }, onsetOn: from, asOf });
  };
}
