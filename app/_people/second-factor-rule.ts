import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { type Act, needsSecondFactor } from "@/lib/people/permissions";
import type { SignedIn } from "./load-signed-in";

/** Whether somebody must set up a second factor before this act. The invented company's data is nobody's, so there it is not asked. */
export async function lacksSecondFactor(person: SignedIn, act: Act): Promise<boolean> {
  if (person.hasSecondFactor || !needsSecondFactor(person.role, act)) return false;
  return !(await readOnly(loadShop)).demo;
}
