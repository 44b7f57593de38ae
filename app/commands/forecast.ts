// Works out what is expected of every part as of today. The site starts it by itself when a month has turned or much
// has changed; by hand it does the same. `--anew` works out also what rests on unchanged records.
import { todayIn } from "@/app/_clock/today";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadShop } from "@/db/queries/shop";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { formatDecimal } from "@/lib/format/format-decimal";

process.on("disconnect", () => process.exit(1)); // the site that started it has ended; what is done so far stays

async function main(): Promise<void> {
  const today = todayIn((await readOnly(loadShop)).timeZone);
  const began = performance.now();
  const { parts, changed } = await workOutOutlooks(today, { anew: process.argv.includes("--anew") });
  const seconds = formatDecimal((performance.now() - began) / 1000, 1);
  console.log(`${parts} parts looked at as of ${today}, ${changed} worked out anew, in ${seconds} s.`);
}

main()
  .then(async () => {
    await closeDatabase();
    process.exit(0);
  })
  .catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  });
