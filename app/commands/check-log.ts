import { parseArgs } from "node:util";
import { keptHeads } from "@/db/backup/kept-heads";
import { BackupError } from "@/db/backup/manifest";
import { checkLog } from "./nightly/check-log";
import { runCommand } from "./run-command";

const usage = `Computes the change log's chain anew, and compares the rows it speaks of with what it says of them.

  npm run check-log [-- --against FOLDER]

  --against   a backup, or a folder of backups: the chain must still hold the link that each of them noted. Whoever
              rules over the database could write the whole chain anew; nobody sees that without a link kept elsewhere`;

async function main(): Promise<number> {
  const asked = readArguments();
  if (asked === undefined) {
    console.error(usage);
    return 2;
  }
  const heads = asked.against === undefined ? [] : await keptHeads(asked.against);
  const { found, first, state } = await checkLog(heads);
  for (const line of first) console.log(line);
  if (found > first.length) console.log(`and ${found - first.length} more.`);
  if (found > 0) return 1;
  const { links, head } = state;
  console.log(
    `${links.toLocaleString("en-US")} entries, every link holds${heads.length === 0 ? "" : `, and so do ${heads.length} that backups kept`}.`,
  );
  if (head !== undefined) console.log(`Last link: ${head.link} ${head.sha256}`);
  return 0;
}

function readArguments(): { readonly against: string | undefined } | undefined {
  try {
    return { against: parseArgs({ options: { against: { type: "string" } } }).values.against };
  } catch {
    return undefined;
  }
}

await runCommand(main, { expected: BackupError });
