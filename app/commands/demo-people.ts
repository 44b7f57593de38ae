// Lets five people into the invented company, one of each role. It refuses a company that is not invented, and one that has people.
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { addDemoPeople } from "@/db/writes/people/add-demo-people";
import { runCommand } from "./run-command";

async function main(): Promise<number> {
  if (!(await readOnly(loadShop)).demo) {
    console.error("This company is not an invented one: nobody was let in.");
    return 1;
  }
  await addDemoPeople();
  return 0;
}

await runCommand(main);
