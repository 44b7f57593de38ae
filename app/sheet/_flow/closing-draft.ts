import { type Cause, causes } from "@/lib/domain/cause";
import type { JobRecord } from "@/lib/domain/job";
import { answeredReadings } from "@/lib/sheets/answered-readings";
import { ownChecksOf } from "@/lib/sheets/sheet";
import { shownMode } from "@/lib/sheets/shown-mode";
import { typedValue } from "@/lib/sheets/typed-value";
import type { Walk } from "@/lib/sheets/walk";
import type { SheetDevice } from "../_device/use-sheet-device";
import type { SheetView } from "./sheet-view";

/** What the technician concludes and adds before the job is closed. */
export interface ClosingDraft {
  readonly cause: Cause;
  readonly component: string;
  readonly failureMode: string;
  readonly parts: readonly PartDraft[];
  readonly minutes: string;
  readonly visits: string;
  readonly callbackOf: string;
  /** Somebody has said whether it returns to an earlier job. */
  readonly isReturnSettled: boolean;
  /** Undefined until somebody has edited it: then it is composed from the record each time. */
  readonly complaint: string | undefined;
  readonly causeNote: string | undefined;
  readonly correction: string | undefined;
}

export interface PartDraft {
  readonly partNumber: string;
  readonly quantity: string;
  readonly cost: string;
  readonly invoice: string;
}

export const emptyPart: PartDraft = { partNumber: "", quantity: "1", cost: "", invoice: "" };

/** What the readings show, as the closing form begins with it. */
export function closingFrom({ verdict, current }: Walk, view: SheetView): ClosingDraft {
  const common = {
    parts: [],
    minutes: "",
    visits: "1",
    callbackOf: view.callbackOf ?? "",
    isReturnSettled: false,
    complaint: undefined,
    causeNote: undefined,
    correction: undefined,
  };
  switch (verdict.kind) {
    case "part": {
      const [entry] = verdict.entries;
      return {
        ...common,
        cause: "component",
        component: entry?.component ?? "",
        failureMode: (entry && shownMode(entry, current)) ?? "",
        parts: [emptyPart],
      };
    }
    case "part first":
      return { ...common, cause: "component", component: verdict.component, failureMode: "", parts: [emptyPart] };
    case "reseated":
      return { ...common, cause: "component", component: "wire_harness", failureMode: "" };
    case "outside":
      return { ...common, cause: verdict.cause, component: "", failureMode: "" };
    case "no fault":
      return { ...common, cause: "no_fault_found", component: "", failureMode: "" };
    default:
      return { ...common, cause: "not_determined", component: "", failureMode: "" };
  }
}

/** The job as it would stand when it is closed now: what the evidence is checked on. */
export function recordOf(
  view: SheetView,
  device: Pick<SheetDevice, "answers" | "photos">,
  draft: ClosingDraft,
): JobRecord {
  const parts = draft.parts.filter(({ partNumber }) => partNumber.trim() !== "");
  const currency = "USD" as const; // no amount is shown here; the server stores the shop's own
  return {
    unit: view.unit,
    earlier: view.earlier,
    readings: answeredReadings(device.answers, { technician: view.technician, own: ownChecksOf(view.sheets) }),
    attachments: device.photos.map(({ id, subject }) => ({
      id,
      subject,
      caption: "",
      mediaType: "image/jpeg",
      bytes: 0,
      sha256: "",
      takenAt: undefined,
    })),
    partLines: parts.map(({ partNumber, quantity, invoice }, index) => ({
      line: index + 1,
      partNumber: partNumber.trim(),
      description: "",
      component: undefined,
      role: "fitted",
      quantity: Number(quantity) || 1,
      unitCost: { cents: 0, currency },
      distributor: undefined,
      invoiceNumber: invoice.trim() === "" ? undefined : invoice.trim(),
      invoiceLine: undefined,
      invoicedOn: undefined,
    })),
    job: {
      jobNumber: view.jobNumber,
      status: "closed",
      requestedOn: view.requestedOn,
      firstVisitOn: view.today,
      diagnosedOn: view.today,
      partsOrderedOn: undefined,
      partsReceivedOn: undefined,
      completedOn: view.today,
      invoicedOn: undefined,
      complaint: draft.complaint ?? "",
      causeNote: draft.causeNote ?? "",
      correction: draft.correction ?? "",
      symptom: view.symptom,
      component: draft.component === "" ? undefined : draft.component,
      failureMode: draft.failureMode === "" ? undefined : draft.failureMode,
      cause: draft.cause,
      visits: Number(draft.visits) || 1,
      technician: view.technician,
      payer: "maker",
      labourMinutes: undefined,
      labour: undefined,
      trip: undefined,
      authorizationNumber: undefined,
      authorizedOn: undefined,
      callbackOf: draft.callbackOf === "" ? undefined : draft.callbackOf,
    },
  };
}

/** What must be put right before the job can be closed; empty where nothing must. */
export function closingProblems(draft: ClosingDraft): readonly string[] {
  const parts = draft.parts.filter(({ partNumber }) => partNumber.trim() !== "");
  return [
    ...(causes[draft.cause].kind === "component" && draft.component === ""
      ? ["Name the component that failed, or another cause."]
      : []),
    ...parts.flatMap(({ partNumber, quantity, cost }) => [
      ...(/^[1-9]\d{0,3}$/.test(quantity.trim())
        ? []
        : [`Part ${partNumber}: the quantity must be a whole number from 1.`]),
      ...(cost.trim() === "" || centsOf(cost) !== undefined
        ? []
        : [`Part ${partNumber}: “${cost}” is no amount. Type it as 74.50.`]),
    ]),
    ...(draft.minutes.trim() === "" || /^\d{1,4}$/.test(draft.minutes.trim())
      ? []
      : ["Minutes worked must be a whole number."]),
    ...(/^[1-9]\d?$/.test(draft.visits.trim()) ? [] : ["Visits must be a whole number from 1."]),
  ];
}

export function centsOf(text: string): number | undefined {
  const read = typedValue(text);
  return read.kind === "value" && read.value >= 0 ? Math.round(read.value * 100) : undefined;
}
