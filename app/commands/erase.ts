import { join } from "node:path";
import { parseArgs } from "node:util";
import { type Erased, eraseCustomer } from "@/db/erasure/erase-customer";
import { erasureListFile, keepErasureList } from "@/db/erasure/erasure-list";
import { openDraftIds } from "@/db/queries/open-draft-ids";
import { runCommand } from "./run-command";

const usage = `Forgets a customer: names, numbers and addresses go from every text, signatures and receipts go; jobs, readings,
sums and rates stay.

  npm run erase -- --word "Full Name" --word "555 0100" --job J-100 --job J-101 --by NAME --reason WHY [--try]

  --word     a name, number or address as it is written in full; found however it is spaced, signed or capitalised.
             In the customer's own jobs each word of it is erased as well
  --job      each job done for the customer
  --reason   without the customer's name: it stays
  --try      says what would be erased and what would be kept; nothing is changed
Pictures are not read: look through the photos of these jobs yourself.`;

async function main(): Promise<number> {
  const asked = readArguments();
  if (asked === undefined) {
    console.error(usage);
    return 2;
  }
  const { dry, ...request } = asked;
  const done = await eraseCustomer({ ...request, at: new Date() }, { dry });
  for (const line of linesOf(done, dry)) console.log(line);
  const drafts = (await openDraftIds()).length;
  if (drafts > 0)
    console.log(
      `Not searched: ${drafts} files that were chosen and not added yet. Add or discard them, or they go after 30 days.`,
    );
  if (!dry) await keepErasureList(join(".data", erasureListFile));
  return 0;
}

function linesOf({ erasureId, jobs, erased, kept }: Erased, dry: boolean): readonly string[] {
  const where = erased.map(({ place, cells }) => `  ${place}: ${cells}`);
  return [
    `${dry ? "Would be erased" : `Erased (${erasureId})`}, in ${jobs.length} jobs and wherever else it stood:`,
    ...(where.length === 0 ? ["  nothing was found"] : where),
    ...(kept.length === 0 ? [] : ["Kept:", ...kept.map(({ what, why }) => `  ${what}: ${why}`)]),
    ...(dry
      ? []
      : ["Backups from before still hold it. Restoring one erases it again; let them expire within 35 days."]),
  ];
}

function readArguments() {
  try {
    const { values } = parseArgs({
      options: {
        word: { type: "string", multiple: true },
        job: { type: "string", multiple: true },
        by: { type: "string" },
        reason: { type: "string" },
        try: { type: "boolean" },
      },
    });
    if (values.word === undefined || values.by === undefined || values.reason === undefined) return undefined;
    return {
      words: values.word,
      jobNumbers: values.job ?? [],
      by: values.by,
      reason: values.reason,
      dry: values.try ?? false,
    };
  } catch {
    return undefined;
  }
}

await runCommand(main);
