import type { ActSlug } from "@/app/_claims/act-forms";
import type { FieldProblem } from "@/app/_ui/error-summary";
import type { Day } from "@/lib/calendar/day";
import type { ClaimAct, ClaimAnswer } from "@/lib/claims/life/claim-act";
import { refusalReasonKeys } from "@/lib/claims/life/refusal-reason";
import { sendingWayKeys } from "@/lib/claims/life/sending-way";
import { FormReader } from "./form-reader";

type OtherAct = Exclude<ClaimAct, { what: "sent" | "built" }>;

export type ReadAct =
  | { readonly ok: true; readonly what: "sent"; readonly sending: SendingForm }
  | { readonly ok: true; readonly what: "other"; readonly act: OtherAct }
  | { readonly ok: false; readonly problems: readonly FieldProblem[] };

export interface SendingForm {
  readonly sentOn: Day;
  readonly way: (typeof sendingWayKeys)[number];
  readonly reference: string;
  readonly reasons: Readonly<Record<string, string>>;
}

/** The form of one act, or everything that is wrong with it. @param today no act lies after it */
export function readActForm(slug: ActSlug, form: FormData, today: Day): ReadAct {
  const reader = new FormReader(form, today);
  if (slug === "sent") {
    const sending = {
      sentOn: reader.day("on"),
      way: reader.oneOf("way", sendingWayKeys, "Choose how it was sent."),
      reference: reader.optional("reference") ?? "",
      reasons: reader.under("reason-"),
    };
    return reader.problems.length > 0 ? { ok: false, problems: reader.problems } : { ok: true, what: "sent", sending };
  }
  const act = readOther(slug, reader);
  return reader.problems.length > 0 ? { ok: false, problems: reader.problems } : { ok: true, what: "other", act };
}

function readOther(slug: Exclude<ActSlug, "sent">, form: FormReader): OtherAct {
  switch (slug) {
    case "withdrawn":
      return { what: "withdrawn", reason: form.required("why", "Write why the draft is withdrawn.") };
    case "received":
      return { what: "received", on: form.day("on"), payerReference: form.optional("reference") };
    case "answered":
      return { what: "answered", on: form.day("on"), answer: answer(form) };
    case "paid":
      return {
        what: "paid",
        on: form.day("on"),
        reference: form.required(
          "reference",
          "Enter the payment’s or credit note’s reference: it finds the money again.",
        ),
        lines: form.someMoney(),
      };
    case "appealed":
      return { what: "appealed", on: form.day("on"), ground: form.required("why", "Write what the appeal rests on.") };
    case "written-off":
      return { what: "written off", on: form.day("on"), reason: form.required("why", "Write why it is written off.") };
    case "audit-opened":
      return {
        what: "audit opened",
        on: form.day("on"),
        reference: form.required("reference", "Enter the reference of the audit letter."),
      };
    case "audit-upheld":
      return { what: "audit upheld", on: form.day("on") };
    case "clawed-back":
      return {
        what: "clawed back",
        on: form.day("on"),
        reference: form.required("reference", "Enter the reference of the letter or debit note."),
        reason: reason(form),
        payerText: form.optional("payerText") ?? "",
        lines: form.someMoney(),
      };
  }
}

function answer(form: FormReader): ClaimAnswer {
  const kinds = ["approved", "needs correction", "rejected"] as const;
  const kind = form.oneOf("kind", kinds, "Choose what the payer answered.");
  const payerText = form.optional("payerText") ?? "";
  if (kind === "rejected") return { kind, reason: reason(form), payerText };
  if (kind === "needs correction") return { kind, reason: reason(form), payerText };
  const lines = form.money();
  const given = form.optional("why-reason");
  return { kind, lines, reason: given === undefined ? undefined : reason(form), payerText };
}

function reason(form: FormReader) {
  return form.oneOf(
    "why-reason",
    refusalReasonKeys,
    "Choose the reason on our list that comes nearest to the payer’s words.",
  );
}
