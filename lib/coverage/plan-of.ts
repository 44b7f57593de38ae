import type { Contract } from "@/lib/domain/contract";
import { normalised } from "@/lib/domain/normalised";
import type { Policy } from "@/lib/domain/policy";

/** Whether the contract's plan is this policy: by its key, or by its name as papers print it, whatever case and blanks. */
export function isPlanOf({ policy: plan }: Contract, { key, name, payer }: Policy): boolean {
  if (plan === key) return true;
  if (payer.kind !== "contract") return false;
  const written = normalised(plan);
  return written !== "" && (written === normalised(key) || written === normalised(name));
}
