import type { DayNumber } from "@/lib/calendar/day-number";
import { componentOf, components } from "@/lib/domain/components";
import { distributors } from "./company";
import { profileOf } from "./component-profiles";
import { dayText, numberOfDay } from "./day-text";
import { drawWhole, happens, pickOne } from "./draws";
import type { Cells, PartLineColumn } from "./file-columns";
import type { JobDetail } from "./job-detail";
import { money } from "./job-row";
import { type MakerKey, makers } from "./models";
import type { RegisterUnit } from "./register-unit";
import type { JobPlan } from "./unit-jobs";

/** The job's rows of part-lines.csv; none where no part was used. */
export function partLines(
  unit: RegisterUnit,
  job: JobPlan,
  detail: JobDetail,
  jobNumber: string,
): readonly Cells<PartLineColumn>[] {
  if (!detail.usesPart || job.status !== "closed") return [];
  const { random, component } = detail;
  const { maker } = unit.model;
  const invoice = drawInvoice(random, job);
  const repaired = detail.cause === "component" && component !== undefined;
  const main = repaired ? repairPart(maker, component, job) : { ...sundryPartOf(maker), component: component ?? "" };
  const lines: Cells<PartLineColumn>[] = [
    { ...main, ...invoice, role: "fitted", invoice_line: drawWhole(random, 1, 9) },
  ];
  if (repaired && happens(random, profileOf(component).smallPart ?? 0))
    lines.push({ ...smallPartOf(maker), component, ...invoice, role: "fitted", invoice_line: 10 });
  if (repaired && componentClassHasCore(component) && happens(random, 0.25)) {
    lines.push({
      part_number: main.part_number,
      description: "Core deposit",
      component,
      role: "core_charge",
      quantity: 1,
      unit_cost: "25.00",
      ...invoice,
      invoice_line: 11,
    });
  }
  if (happens(random, 0.04))
    lines.push({
      part_number: "FREIGHT",
      description: "Freight",
      role: "freight",
      quantity: 1,
      unit_cost: "12.50",
      ...invoice,
      invoice_line: 12,
    });
  return lines.map((line, index) => ({ job_number: jobNumber, line: index + 1, ...line }));
}

/** Part numbers carry maker, component and revision; the revision changed once, so two numbers name one part. */
export function partNumberOf(maker: MakerKey, component: string, on: DayNumber): string {
  const code = 100 + components.findIndex(({ key }) => key === component);
  return `${makers[maker].partPrefix}-${code}-${on < revisedOn ? "A" : "B"}`;
}

export const revisedOn = numberOfDay("2023-07-01");

function repairPart(maker: MakerKey, component: string, job: JobPlan): Cells<PartLineColumn> {
  const profile = profileOf(component);
  return {
    part_number: partNumberOf(maker, component, job.completedOn),
    description: componentOf(component)?.name ?? component,
    component,
    quantity: profile.pieces ?? 1,
    unit_cost: money(partCentsOf(maker, component, job.completedOn)),
  };
}

/** What one piece costs on a day: prices rise by 3 % a year. */
export function partCentsOf(maker: MakerKey, component: string, on: DayNumber): number {
  const years = (on - numberOfDay("2021-01-01")) / 365.25;
  return Math.round(profileOf(component).partCents * priceLevel[maker] * 1.03 ** years);
}

const priceLevel: Readonly<Record<MakerKey, number>> = { brackenhall: 1, veltrane: 1.2, dunmorrow: 0.9 };

/** It goes with many components and belongs to none of them. */
export function smallPartOf(maker: MakerKey) {
  return {
    part_number: `${makers[maker].partPrefix}-900`,
    description: "Seal, clamp and screw set",
    quantity: 1,
    unit_cost: "6.40",
  };
}

export function sundryPartOf(maker: MakerKey) {
  return {
    part_number: `${makers[maker].partPrefix}-950`,
    description: "Hose and fittings",
    quantity: 1,
    unit_cost: "18.90",
  };
}

function componentClassHasCore(component: string): boolean {
  return component === "control_board" || component === "main_or_inverter_board" || component === "compressor";
}

/** Van stock was bought some days or weeks before; an ordered part came for the job. Some invoices are not found. */
function drawInvoice(random: JobDetail["random"], job: JobPlan): Cells<PartLineColumn> {
  const ordered = job.completedOn > job.firstVisitOn;
  const on = ordered ? job.firstVisitOn : job.firstVisitOn - drawWhole(random, 3, 90);
  const distributor = pickOne(random, distributors);
  const number = `${distributor.slice(0, 2).toUpperCase()}${drawWhole(random, 1_000_000, 9_999_999)}`;
  return happens(random, 0.06) ? { distributor } : { distributor, invoice_number: number, invoiced_on: dayText(on) };
}
