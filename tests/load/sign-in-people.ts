import type { Role } from "@/lib/people/role";
import { headersAs } from "../db/people/signed-in";

/** Roles that may see every page that is asked for. */
const mayReadAll: readonly Role[] = ["administrator", "manager", "owner", "reader"];

/** Somebody new for each place, signed in once, as people are at the start of their day; what each browser then sends. */
export async function signInPeople(
  count: number,
  roles: readonly Role[] = mayReadAll,
): Promise<readonly Readonly<Record<string, string>>[]> {
  const people: Readonly<Record<string, string>>[] = [];
  for (let number = 0; number < count; number += 1) {
    const { cookie = "" } = await headersAs(roles[number % roles.length] ?? "owner");
    people.push({ cookie });
  }
  return people;
}
