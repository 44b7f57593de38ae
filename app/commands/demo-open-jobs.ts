// Opens a few jobs of the invented company, so that its technicians have something to do. It refuses a company that is not invented.
import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadOpenJobs, loadTechnicians } from "@/db/queries/sheet-lists";
import { loadShop } from "@/db/queries/shop";
import { openJob } from "@/db/writes/sheets/open-job";
import { addDays, day } from "@/lib/calendar/day";

const wanted = [
  ["front_load_washer", "will_not_drain", "Will not drain, stops with water in the drum."],
  ["dishwasher", "will_not_drain", "Water stays in the bottom after every load."],
  ["electric_dryer", "will_not_heat", "Runs but the clothes come out cold and wet."],
  ["refrigerator", "not_cold", "Milk is warm since the weekend."],
  ["range_oven", "will_not_heat", "Oven does not get warm, the top works."],
] as const;

async function main(): Promise<number> {
  const until = day(process.argv[2] ?? "");
  const { demo } = await readOnly(loadShop);
  if (!demo) {
    console.error("This company is not an invented one: no jobs were opened.");
    return 1;
  }
  const { open, technicians } = await readOnly(async (db) => ({
    open: await loadOpenJobs(db, undefined),
    technicians: await loadTechnicians(db),
  }));
  if (open.length > 0) return 0;
  for (const [place, [productType, symptom, complaint]] of wanted.entries()) {
    const [unit] = await readOnly((db) =>
      db.rows<{ serial: string }>(sql`
        select u.serial from units u join models m using (model_id) where m.product_type = ${productType} and u.serial is not null
          and u.in_register and u.retired_on is null and u.in_service_on < ${until}::date - 200 order by u.unit_id limit 1`),
    );
    if (unit === undefined) continue;
    await openJob({
      jobNumber: `S-${101 + place}`,
      serial: unit.serial,
      symptom,
      complaint,
      requestedOn: addDays(until, -(place % 3)),
      technician: technicians[place % Math.max(1, technicians.length)],
      payer: "maker",
      callbackOf: undefined,
    });
  }
  console.log("Opened jobs for the check sheet.");
  return 0;
}

main()
  .then(async (code) => {
    await closeDatabase();
    process.exit(code);
  })
  .catch((error) => {
    console.error(error);
    process.exit(1);
  });
