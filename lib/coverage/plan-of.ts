import type { Contract } from "@/lib/domain/contract";
import { normalised } from "@/lib/domain/normalised";
import type { Policy } from "@/lib/domain/policy";

/** Whether the contract's plan is this policy: by its key, or by its name as papers print it, whatever case and blanks. */
export function isPlanOf({ policy: plan }: Contract, { key, name, payer }: Policy): boolean {
  if (plan === key) return true;
  if (payer.kind !== "contract") return false;
  const written = plain(plan);
  return written !== "" && (written === plain(key) || written === plain(name));
}

/** A company has some dozens of plans and asks of each for every job. */
const most = 10_000;
const known = new Map<string, string>();

function plain(text: string): string {
  const found = known.get(text);
  if (found !== undefined) return found;
  if (known.size >= most) known.clear();
  const made = normalised(text);
  known.set(text, made);
  return made;
}
