// A closed job with everything that was found, used and measured on it, as every room of the house sees it.
import type { Day } from "@/lib/calendar/day";
import type { Cause } from "./cause";
import type { Money } from "./money";
import type { Reading } from "./reading";
import type { Unit } from "./unit";

export const jobStatuses = ["closed", "void", "cancelled", "estimate", "duplicate"] as const;
export type JobStatus = (typeof jobStatuses)[number];

/** Who is meant to pay, as the company filed the job. */
export const payerKinds = ["customer", "maker", "contract", "campaign", "dealer", "own_guarantee", "goodwill"] as const;
export type PayerKind = (typeof payerKinds)[number];

export interface JobDates {
  /** Day the customer reported the trouble; by default it decides entitlement. */
  readonly requestedOn: Day | undefined;
  readonly firstVisitOn: Day | undefined;
  readonly diagnosedOn: Day | undefined;
  readonly partsOrderedOn: Day | undefined;
  readonly partsReceivedOn: Day | undefined;
  /** Completion: filing windows run from here. */
  readonly completedOn: Day;
  readonly invoicedOn: Day | undefined;
}

export interface ClosedJob extends JobDates {
  readonly jobNumber: string;
  readonly status: JobStatus;
  /** Complaint, cause and correction as the technician wrote them; never rewritten. */
  readonly complaint: string;
  readonly causeNote: string;
  readonly correction: string;
  /** Keys of the catalogue; undefined where the job does not say. */
  readonly symptom: string | undefined;
  readonly component: string | undefined;
  readonly failureMode: string | undefined;
  readonly cause: Cause;
  readonly visits: number;
  readonly technician: string | undefined;
  readonly payer: PayerKind;
  readonly labourMinutes: number | undefined;
  readonly labour: Money | undefined;
  readonly trip: Money | undefined;
  /** Miles driven for all visits, there and back, where somebody noted them. */
  readonly tripMiles?: number | undefined;
  readonly authorizationNumber: string | undefined;
  readonly authorizedOn: Day | undefined;
  /** Job number of the earlier job that this one returns to. */
  readonly callbackOf: string | undefined;
}

export const partRoles = ["fitted", "core_charge", "freight"] as const;
export type PartRole = (typeof partRoles)[number];

export interface PartLine {
  readonly line: number;
  readonly partNumber: string;
  readonly description: string;
  readonly component: string | undefined;
  readonly role: PartRole;
  readonly quantity: number;
  readonly unitCost: Money;
  readonly distributor: string | undefined;
  readonly invoiceNumber: string | undefined;
  readonly invoiceLine: string | undefined;
  readonly invoicedOn: Day | undefined;
}

/** A photo or document; bytes live in the database, everything else is here. */
export interface Attachment {
  readonly id: string;
  readonly subject: PhotoSubject;
  readonly caption: string;
  readonly mediaType: "image/jpeg" | "application/pdf";
  readonly bytes: number;
  readonly sha256: string;
  /** As the camera said; undefined where it did not. */
  readonly takenAt: string | undefined;
}

/** What a picture or paper shows; evidence rules ask for these by name. */
export const photoSubjects = {
  plate: "Rating plate, model and serial readable",
  fault_code: "Fault code on the display",
  drain_path: "Filter, trap and impeller",
  foreign_object: "The object that was found",
  kinked_hose: "Hose where it is kinked or crushed",
  suds: "Suds in drum or pump",
  failed_part: "Failed part",
  part_labels: "Labels of the old and the new part",
  board_front: "Control board, component side",
  board_back: "Control board, solder side",
  meter: "Meter showing the reading",
  connector: "Connector or harness",
  video: "Still from a video or sound clip",
  receipt: "Proof of purchase",
  part_invoice: "Distributor's part invoice",
  signature: "Customer's signature",
  other: "Other",
} as const;
export type PhotoSubject = keyof typeof photoSubjects;

/** Their keys, as a form or file names them. */
export const photoSubjectKeys = Object.keys(photoSubjects) as [PhotoSubject, ...PhotoSubject[]]; // Object.keys loses the key type

/** A job with its unit and all its children: what coverage, evidence and claims look at. */
export interface JobRecord {
  readonly job: ClosedJob;
  readonly unit: Unit;
  readonly partLines: readonly PartLine[];
  readonly readings: readonly Reading[];
  readonly attachments: readonly Attachment[];
  /** Earlier jobs on the same unit, newest first. */
  readonly earlier: readonly EarlierJob[];
}

export interface EarlierJob {
  readonly jobNumber: string;
  readonly completedOn: Day;
  readonly component: string | undefined;
  readonly symptom: string | undefined;
  readonly cause: Cause;
  readonly requestedOn?: Day | undefined;
  /** Who was meant to pay, as it was filed. */
  readonly payer?: PayerKind | undefined;
  /** Components whose parts were fitted. */
  readonly fitted?: readonly string[];
}
