// The invented company as files in the form that intake reads, with the truth that they were drawn from beside them.
// Start here: units and jobs are told by register-unit.ts and unit-jobs.ts, rates stand in component-lives.ts.
import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { chanceSearch } from "./chance-cell";
import { company } from "./company";
import { closeDemoFiles, type DemoFiles, openDemoFiles, settleDemoFiles } from "./demo-files";
import { heldRowWriter } from "./held-rows";
import { sheetsOfAllModels } from "./model-sheets";
import { makers, modelNumber } from "./models";
import { writeNoDrainJobs } from "./no-drain-files";
import { writePartCatalogue } from "./part-catalogue";
import { planDemo } from "./plan-demo";
import { demoPolicies } from "./plan-policies";
import { randomOf } from "./random";
import { readmeText } from "./readme-text";
import { registerUnit } from "./register-unit";
import type { Scenario } from "./scenario";
import { trueSettings } from "./true-settings";
import type { Truth } from "./truth";
import { unitContract } from "./unit-contract";
import { unitJobs } from "./unit-jobs";
import { unitRow } from "./unit-row";
import { jobTally, writeJob } from "./write-job";

export async function writeDemo(scenario: Scenario, folder: string): Promise<Truth> {
  await mkdir(join(folder, "photos"), { recursive: true });
  const files = openDemoFiles(folder);
  const held = heldRowWriter(randomOf(scenario.seed, 5), files);
  const chance = chanceSearch();
  const plan = planDemo(scenario, (unit, jobs) => {
    files.units.write(unitRow(unit));
    const contract = unitContract(scenario, unit);
    if (contract !== undefined) files.contracts.write(contract);
    held.afterUnit(unit);
    chance.add(unit, jobs);
  });
  const tally = jobTally();
  for (let rank = 0; rank < plan.jobs; rank++) {
    const place = plan.at(rank);
    const unit = registerUnit(scenario, place.unit);
    writeJob({ scenario, files, held, tally, plan }, unit, unitJobs(scenario, unit), place.position);
    if (rank % 500 === 0) await settleDemoFiles(files);
  }
  writeRanges(files);
  const fixedJobs = await writeNoDrainJobs(scenario, files, folder);
  await writePartCatalogue(join(folder, "parts.csv"));
  const rows = await closeDemoFiles(files);
  const truth: Truth = {
    ...trueSettings(scenario),
    chanceOnly: chance.found(),
    fixedJobs,
    counts: { ...rows, ...tally.counts() },
    heldRows: held.rows,
    acceptedDirt: tally.dirt,
    leaks: tally.leaks(),
  };
  await writeDocuments(scenario, folder, truth);
  return truth;
}

function writeRanges({ ranges }: DemoFiles): void {
  for (const { model, ranges: ofModel } of sheetsOfAllModels) {
    for (const range of ofModel) {
      const source = `Sheet of ${model.root}`;
      ranges.write({
        maker: makers[model.maker].name,
        model: modelNumber(model),
        ...range,
        source,
        mark: "invented for the demo",
      });
    }
  }
}

async function writeDocuments({ recordsFrom }: Scenario, folder: string, truth: Truth): Promise<void> {
  const shop = { schema: "ohmsworth/shop/1", ...company, recordsFrom, demo: true };
  await writeFile(join(folder, "shop.json"), json(shop));
  await writeFile(join(folder, "policies.json"), json({ schema: "ohmsworth/policies/1", policies: demoPolicies() }));
  await writeFile(join(folder, "truth.json"), json(truth));
  await writeFile(join(folder, "README.md"), readmeText(truth));
}

function json(document: unknown): string {
  return `${JSON.stringify(document, undefined, 1)}\n`;
}
