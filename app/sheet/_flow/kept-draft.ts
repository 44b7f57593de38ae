import { type Cause, causes } from "@/lib/domain/cause";
import type { ClosingDraft, PartDraft } from "./closing-draft";

/** What of a closing may lie on the device: all but the complaint, which may name the customer. */
export function draftToKeep({ complaint: _, ...draft }: Partial<ClosingDraft>): Readonly<Record<string, unknown>> {
  return draft;
}

/** What the device kept, as far as this program understands it. */
export function draftFromDevice(kept: Readonly<Record<string, unknown>>): Partial<ClosingDraft> {
  const { cause, parts, isReturnSettled } = kept;
  const texts = textFields.flatMap((name) => {
    const text = kept[name];
    return typeof text === "string" ? [[name, text] as const] : [];
  });
  return {
    ...Object.fromEntries(texts),
    ...(typeof cause === "string" && Object.hasOwn(causes, cause) ? { cause: cause as Cause } : {}), // looked up before it
    ...(Array.isArray(parts) && parts.every(isPart) ? { parts } : {}),
    ...(isReturnSettled === true ? { isReturnSettled } : {}),
  };
}

const textFields = ["component", "failureMode", "minutes", "visits", "callbackOf", "causeNote", "correction"] as const;

function isPart(value: unknown): value is PartDraft {
  if (typeof value !== "object" || value === null) return false;
  return ["partNumber", "quantity", "cost", "invoice"].every(
    (name) => typeof (value as Readonly<Record<string, unknown>>)[name] === "string", // an object, by the line before
  );
}
