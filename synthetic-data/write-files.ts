import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { scenarioOf } from "./scenario";
import { writeDemo } from "./write-demo";

const usage = `npm run demo -- --to FOLDER [--size 1] [--seed 1] [--until 2026-10-31]
Writes the invented company's files into FOLDER. Size 1 is about 12,000 units and 15,000 jobs.`;

/** The command line of the generator. */
async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      to: { type: "string" },
      size: { type: "string", default: "1" },
      seed: { type: "string", default: "1" },
      until: { type: "string", default: "2026-10-31" },
    },
  });
  if (values.to === undefined) throw new RangeError("--to: a folder is needed");
  const scenario = scenarioOf({ seed: Number(values.seed), size: Number(values.size), until: values.until });
  const folder = resolve(values.to);
  const { counts, heldRows } = await writeDemo(scenario, folder);
  console.log(
    `${counts.units} units, ${counts.jobs} jobs, ${counts.partLines} part lines, ${counts.readings} readings`,
  );
  console.log(`${counts.photos} pictures; ${heldRows.length} rows are wrong on purpose. Written to ${folder}`);
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : String(error));
  console.error(usage);
  process.exitCode = 1;
});
