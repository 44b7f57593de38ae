import { parseArgs } from "node:util";
import { todayIn } from "@/app/_clock/today";
import { loadFailureRates, type RatesView } from "@/app/repeats/load-failure-rates";
import { ratesDocument } from "@/app/repeats/rate-record";
import { ratesTable } from "@/app/repeats/rates-table";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { runCommand } from "./run-command";

const usage = `Failure rates with their limits, as the Repeats page shows them.

  npm run rates -- --by component,age [--json]

  --by      one or two of component, model, maker, type, age, symptom, cause, payer, year
  --count   failures (default), calls, or one cause
  --make --model --type --component --symptom --age   narrow the fleet
  --from --to   calendar days, 2025-03-31
  --level   90, 95 (default) or 99
  --json    the same as a document`;

const textOptions = [
  "by",
  "count",
  "make",
  "model",
  "type",
  "component",
  "symptom",
  "age",
  "from",
  "to",
  "level",
] as const;

async function main(): Promise<number> {
  const read = readArguments();
  if (read === undefined) return 2;
  const { json, ...values } = read;
  const view = await readOnly(async (db) => loadFailureRates(db, values, todayIn((await loadShop(db)).timeZone)));
  return print(view, json);
}

/** A command is typed by hand or kept in a script: what it cannot mean is a mistake to mend, not a notice to pass over. */
function print(view: RatesView, json: boolean): number {
  if (view.kind === "no-data") {
    console.error("There are no jobs yet. Load units and jobs first: npm run load -- units.csv jobs.csv");
    return 1;
  }
  if (view.address.notices.length > 0) {
    console.error(view.address.notices.join("\n"));
    return 2;
  }
  console.log(
    json ? JSON.stringify(ratesDocument(view.rates), undefined, 2) : ratesTable(view.rates, view.address.order),
  );
  return 0;
}

function readArguments(): (Record<string, string> & { json: boolean }) | undefined {
  try {
    const options = Object.fromEntries(textOptions.map((name) => [name, { type: "string" as const }]));
    const { values } = parseArgs({ options: { ...options, json: { type: "boolean" }, help: { type: "boolean" } } });
    if (values.help === true) {
      console.log(usage);
      return undefined;
    }
    return { ...values, json: values.json === true } as Record<string, string> & { json: boolean }; // parseArgs checked the kinds
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : error}\n\n${usage}`);
    return undefined;
  }
}

await runCommand(main);
