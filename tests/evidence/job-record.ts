// A closed job on one washer, to be varied by a test. Nothing in it comes from the rules under test.
import { day } from "@/lib/calendar/day";
import type { Attachment, ClosedJob, JobRecord, PartLine, PhotoSubject } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { Reading } from "@/lib/domain/reading";
import type { Unit } from "@/lib/domain/unit";

export interface RecordNotes {
  readonly productType?: ProductType;
  readonly job?: Partial<ClosedJob>;
  readonly readings?: readonly Reading[];
  readonly photos?: readonly PhotoSubject[];
  readonly fitted?: string | undefined;
}

export function jobRecord({
  productType = "front_load_washer",
  job = {},
  readings = [],
  photos = [],
  fitted,
}: RecordNotes): JobRecord {
  return {
    job: { ...plainJob, ...job },
    unit: { ...plainUnit, productType },
    partLines: fitted === undefined ? [] : [partLine(fitted)],
    readings,
    attachments: photos.map(attachment),
    earlier: [],
  };
}

export function partLine(component: string): PartLine {
  return {
    line: 1,
    partNumber: "P-4410",
    description: "part",
    component,
    role: "fitted",
    quantity: 1,
    unitCost: { cents: 6200, currency: "USD" },
    distributor: "Northgate Parts",
    invoiceNumber: "INV-77",
    invoiceLine: "3",
    invoicedOn: undefined,
  };
}

export function plainReading(notes: Partial<Reading> & Pick<Reading, "check" | "outcome">): Reading {
  return {
    number: 1,
    pointA: "1",
    pointB: "2",
    mode: "ohm",
    power: "off",
    isolated: true,
    loadConnected: undefined,
    commanded: undefined,
    temperatureC: undefined,
    sheetLow: undefined,
    sheetHigh: undefined,
    sheetReference: undefined,
    note: undefined,
    technician: undefined,
    takenAt: undefined,
    ...notes,
  };
}

function attachment(subject: PhotoSubject, index: number): Attachment {
  return {
    id: `photo-${index + 1}`,
    subject,
    caption: "",
    mediaType: "image/jpeg",
    bytes: 1000,
    sha256: "0".repeat(64),
    takenAt: undefined,
  };
}

const plainJob: ClosedJob = {
  jobNumber: "J-1",
  status: "closed",
  complaint: "",
  causeNote: "",
  correction: "",
  symptom: undefined,
  component: undefined,
  failureMode: undefined,
  cause: "component",
  visits: 1,
  technician: undefined,
  payer: "maker",
  labourMinutes: undefined,
  labour: undefined,
  trip: undefined,
  authorizationNumber: undefined,
  authorizedOn: undefined,
  callbackOf: undefined,
  requestedOn: day("2025-03-03"),
  firstVisitOn: undefined,
  diagnosedOn: undefined,
  partsOrderedOn: undefined,
  partsReceivedOn: undefined,
  completedOn: day("2025-03-05"),
  invoicedOn: undefined,
};

const plainUnit: Unit = {
  maker: "Halvorsen",
  model: "HW-210",
  productType: "front_load_washer",
  serial: "HW2100001",
  madeFrom: undefined,
  madeUntil: undefined,
  shippedOn: undefined,
  soldOn: undefined,
  deliveredOn: undefined,
  installedOn: undefined,
  occupiedOn: undefined,
  registeredOn: undefined,
  retiredOn: undefined,
  recordedFrom: undefined,
  use: "household",
  territory: "US",
  ownerNumber: 1,
};
