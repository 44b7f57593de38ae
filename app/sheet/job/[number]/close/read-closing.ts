import { z } from "zod";
import type { ClosingJob } from "@/db/writes/sheets/close-job";
import { type Cause, causeKeys, causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import { failureModeOf } from "@/lib/domain/failure-modes";

const text = (most: number) =>
  z
    .string()
    .max(most, `is longer than ${most} characters`)
    .transform((value) => value.replaceAll(/[^\P{Cc}\n]+/gu, " ").trim());

const part = z.object({
  partNumber: text(80).pipe(z.string().min(1, "is missing")),
  quantity: z.int().min(1, "must be 1 or more").max(9_999),
  unitCostCents: z.int().min(0).max(100_000_000).optional(),
  invoiceNumber: text(80).optional(),
});

const closing = z
  .object({
    complaint: text(5_000).optional(),
    causeNote: text(5_000),
    correction: text(5_000),
    cause: z.enum(causeKeys as [Cause, ...Cause[]]), // the list is not empty
    component: z
      .string()
      .refine((key) => componentOf(key) !== undefined, "is no component of the catalogue")
      .optional(),
    failureMode: z
      .string()
      .refine((key) => failureModeOf(key) !== undefined, "is no failure mode of the catalogue")
      .optional(),
    callbackOf: text(200).optional(),
    visits: z.int().min(1).max(99),
    labourMinutes: z.int().min(0).max(10_000).optional(),
    parts: z.array(part).max(50),
  })
  .refine(({ cause, component }) => causes[cause].kind !== "component" || component !== undefined, {
    error: "a failure of a component must name the component",
    path: ["component"],
  });

export type ClosingForm = Omit<ClosingJob, "jobNumber" | "today" | "by">;

/** What a phone sends to close a job; or every problem with it, by its place. */
export function readClosing(
  body: unknown,
): { readonly ok: true; readonly form: ClosingForm } | { readonly ok: false; readonly problems: readonly string[] } {
  const read = closing.safeParse(body);
  if (!read.success)
    return { ok: false, problems: read.error.issues.map((issue) => `${issue.path.join(".")} ${issue.message}`) };
  const { complaint, component, failureMode, callbackOf, labourMinutes, parts, ...rest } = read.data;
  return {
    ok: true,
    form: {
      ...rest,
      complaint,
      component,
      failureMode,
      callbackOf,
      labourMinutes,
      parts: parts.map(({ unitCostCents, invoiceNumber, ...each }) => ({ ...each, unitCostCents, invoiceNumber })),
    },
  };
}
