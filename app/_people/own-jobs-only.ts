import type { SignedIn } from "./load-signed-in";

/** What is added to a list of jobs: a technician sees their own. One without a name on jobs has none. */
export function ownJobsOnly({ role, technician }: SignedIn): { readonly technician?: string } {
  return role === "technician" ? { technician: technician ?? "" } : {};
}
