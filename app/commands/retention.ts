import { parseArgs } from "node:util";
import { type Due, setRetention } from "@/db/retention/run-retention";
import { formatBytes } from "@/lib/format/format-bytes";
import { runRetention } from "./nightly/run-retention";
import { runCommand } from "./run-command";

const usage = `Removes what is over its time. The site does it every night by itself.

  npm run retention -- --try                                  what would be removed; nothing is
  npm run retention                                           removes it
  npm run retention -- --set KIND --days 60 --by NAME         keeps a kind for so long; --days never keeps it for good`;

async function main(): Promise<number> {
  const asked = readArguments();
  if (asked === undefined) {
    console.error(usage);
    return 2;
  }
  if (asked.kind !== undefined) {
    const days = asked.days === "never" ? null : Number(asked.days);
    await setRetention(asked.kind, days, { by: asked.by, now: new Date() });
  }
  const dry = asked.dry || asked.kind !== undefined;
  for (const due of await runRetention({ dry })) console.log(lineOf(due, dry));
  return 0;
}

function lineOf({ kind, what, days, rows, bytes }: Due, dry: boolean): string {
  const limit = days === undefined ? "kept for good" : `kept ${days} days`;
  const much =
    rows === 0 ? "none is over that" : `${rows} ${dry ? "would be" : "were"} removed (${formatBytes(bytes)})`;
  return `${kind} (${limit}): ${much}. ${what}.`;
}

function readArguments() {
  try {
    const { values } = parseArgs({
      options: { try: { type: "boolean" }, set: { type: "string" }, days: { type: "string" }, by: { type: "string" } },
    });
    if ((values.set === undefined) !== (values.days === undefined)) return undefined;
    return { dry: values.try ?? false, kind: values.set, days: values.days, by: values.by ?? "" };
  } catch {
    return undefined;
  }
}

await runCommand(main);
