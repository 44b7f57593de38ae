// Works out what is expected of every part as of today. The site starts it by itself when a month has turned or much
// has changed; by hand it does the same. `--anew` works out also what rests on unchanged records.
import { todayIn } from "@/app/_clock/today";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { formatDecimal } from "@/lib/format/format-decimal";
import { runCommand } from "./run-command";

async function main(): Promise<number> {
  const today = todayIn((await readOnly(loadShop)).timeZone);
  const began = performance.now();
  const { parts, changed } = await workOutOutlooks(today, { anew: process.argv.includes("--anew") });
  const seconds = formatDecimal((performance.now() - began) / 1000, 1);
  console.log(`${parts} parts looked at as of ${today}, ${changed} worked out anew, in ${seconds} s.`);
  return 0;
}

await runCommand(main, { endsWithSite: true }); // what is done so far stays
