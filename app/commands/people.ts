// Lets somebody in who has no other way: prints a link to a new password, such as for an owner who lost the only one.
import process from "node:process";
import { readOnly } from "@/db/client";
import { loadPeople } from "@/db/queries/people";
import { emailKey } from "@/db/writes/people/add-person";
import { inviteToNewPassword } from "@/db/writes/people/invite";
import { removeSecondFactor } from "@/db/writes/people/second-factor";
import { runCommand } from "./run-command";

const usage = "Say: npm run people -- --link E-MAIL [--without-second-factor]";

async function main(words: readonly string[]): Promise<number> {
  const [option, email, ...more] = words;
  const takesOff = more.length === 1 && more[0] === "--without-second-factor";
  if (option !== "--link" || email === undefined || (more.length > 0 && !takesOff)) {
    console.error(usage);
    return 1;
  }
  const person = (await readOnly(loadPeople)).find((each) => each.email === emailKey(email));
  if (person === undefined) {
    console.error(`Nobody here has the address ${email}.`);
    return 1;
  }
  const made = await inviteToNewPassword(person.id, "by command");
  if (made.kind !== "made") throw new Error(`The link was not made: ${made.kind}.`);
  if (takesOff) await removeSecondFactor(person.id);
  console.log(`Open /join/${made.token} on the site within a week; it opens once.`);
  return 0;
}

await runCommand(() => main(process.argv.slice(2)));
