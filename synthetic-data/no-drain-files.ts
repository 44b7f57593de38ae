import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { Day } from "@/lib/calendar/day";
import { addDays } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { componentOf } from "@/lib/domain/components";
import { type PhotoSubject, photoSubjects } from "@/lib/domain/job";
import { company } from "./company";
import { profileOf } from "./component-profiles";
import type { DemoFiles } from "./demo-files";
import { drawPhoto } from "./draw-photo";
import { money } from "./job-row";
import { makers } from "./models";
import { type NoDrainJob, noDrainJobs, noDrainModel, noDrainModelNumber } from "./no-drain-jobs";
import { partNumberOf } from "./part-lines";
import type { PhotoFacts } from "./photo-scenes";
import { readingRow } from "./reading-row";
import type { Scenario } from "./scenario";
import { takenAt } from "./taken-at";
import type { FixedJob } from "./truth";

const technician = "Petra";
const maker = makers[noDrainModel.maker].name;

/** The ten jobs told in full, with unit, part, readings and pictures. */
export async function writeNoDrainJobs(
  { until }: Scenario,
  files: DemoFiles,
  folder: string,
): Promise<readonly FixedJob[]> {
  const jobs = noDrainJobs(until);
  for (const job of jobs) {
    writeUnit(job, files);
    writeJobRow(job, files, until);
    writePart(job, files);
    for (const reading of job.found.readings) {
      files.readings.write(
        readingRow(job.jobNumber, {
          ...reading,
          technician,
          takenAt: takenAt(dayNumber(job.visitedOn), 550 + 3 * reading.number),
        }),
      );
    }
    for (const [index, subject] of job.found.photos.entries()) await writePhoto(job, subject, index, files, folder);
  }
  return jobs.flatMap(({ jobNumber, serial, found }) => {
    const { component = "", cause } = found;
    return [{ jobNumber, serial, model: noDrainModelNumber, component, cause }];
  });
}

function writeUnit({ serial, soldOn, installedOn }: NoDrainJob, { units }: DemoFiles): void {
  units.write({
    maker,
    model: noDrainModelNumber,
    product_type: noDrainModel.productType,
    serial,
    made: addDays(soldOn, -60),
    shipped_on: addDays(soldOn, -45),
    sold_on: soldOn,
    delivered_on: installedOn,
    installed_on: installedOn,
    registered_on: installedOn,
    use: "household",
    territory: company.territory,
    owner_number: 1,
  });
}

function writeJobRow(job: NoDrainJob, { jobs }: DemoFiles, until: Day): void {
  const { found, completedOn } = job;
  const warranty = found.cause === "component" || found.cause === "no_fault_found";
  jobs.write({
    job_number: job.jobNumber,
    status: "closed",
    maker,
    model: noDrainModelNumber,
    product_type: noDrainModel.productType,
    serial: job.serial,
    requested_on: job.requestedOn,
    first_visit_on: job.visitedOn,
    diagnosed_on: job.visitedOn,
    completed_on: completedOn,
    invoiced_on: completedOn <= until ? completedOn : "",
    complaint: found.complaint,
    cause_note: found.causeNote,
    correction: found.correction,
    symptom: found.symptom,
    component: found.component,
    failure_mode: found.failureMode,
    cause: found.cause,
    visits: job.visitedOn === completedOn ? 1 : 2,
    technician,
    payer: warranty ? "maker" : "customer",
    labour_minutes: 75,
    labour: money(14_250),
    trip: money(3900),
    trip_miles: 24,
  });
}

/** The part that cured it, and the picture's facts about it. */
function fittedPart({ found, jobNumber, visitedOn }: NoDrainJob): PhotoFacts["part"] {
  if (found.fitted === undefined) return undefined;
  return {
    number: partNumberOf(noDrainModel.maker, found.fitted, dayNumber(visitedOn)),
    name: componentOf(found.fitted)?.name ?? found.fitted,
    invoice: `FE77${jobNumber.slice(2)}`,
    cost: money(profileOf(found.fitted).partCents),
  };
}

function writePart(job: NoDrainJob, { partLines }: DemoFiles): void {
  const part = fittedPart(job);
  if (part === undefined) return;
  partLines.write({
    job_number: job.jobNumber,
    line: 1,
    part_number: part.number,
    description: part.name,
    component: job.found.fitted,
    role: "fitted",
    quantity: 1,
    unit_cost: part.cost,
    distributor: "Fenwater Parts",
    invoice_number: part.invoice,
    invoice_line: 1,
    invoiced_on: addDays(job.visitedOn, -5),
  });
}

async function writePhoto(
  job: NoDrainJob,
  subject: PhotoSubject,
  index: number,
  { photos }: DemoFiles,
  folder: string,
): Promise<void> {
  const code = job.found.readings.find(({ outcome }) => outcome.kind === "code")?.outcome;
  const facts: PhotoFacts = {
    maker,
    model: noDrainModelNumber,
    serial: job.serial,
    soldOn: job.soldOn,
    visitedOn: job.visitedOn,
    faultCode: code?.kind === "code" ? code.code : undefined,
    part: fittedPart(job),
    failure: job.found.failureMode ?? "",
  };
  const file = `photos/${job.jobNumber}-${subject}.jpg`;
  await writeFile(join(folder, file), await drawPhoto(subject, facts, job.jobNumber));
  photos.write({
    job_number: job.jobNumber,
    subject,
    file,
    caption: `${photoSubjects[subject]} (drawn for the demo)`,
    taken_at: takenAt(dayNumber(job.visitedOn), 545 + 4 * index),
  });
}
