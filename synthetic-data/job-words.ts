// What a technician and a call desk would write. Facts only; some in capitals and short, as they come.
import { type Cause, causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import { failureModeOf } from "@/lib/domain/failure-modes";
import { symptomOf } from "@/lib/domain/symptoms";
import { happens, pickOne } from "./draws";
import type { Random } from "./random";

export interface JobWords {
  readonly complaint: string;
  readonly causeNote: string;
  readonly correction: string;
}

export function failureWords(
  random: Random,
  symptom: string,
  component: string,
  mode: string,
  withPart: boolean,
): JobWords {
  const part = lower(componentOf(component)?.name ?? component);
  const how = lower(failureModeOf(mode)?.name ?? mode);
  return {
    complaint: complaintWords(random, symptom),
    causeNote: `${capital(part)}: ${how}. No outside cause seen.`,
    correction: withPart
      ? pickOne(random, [
          `Replaced ${part}. Ran a test cycle, passed.`,
          `Fitted new ${part}, tested, two cycles without fault.`,
          `Replaced ${part}; test pass; fault code cleared.`,
        ])
      : pickOne(random, [`Repaired ${part} in place, tested.`, `Secured ${part}, tested.`]),
  };
}

export function callWords(random: Random, symptom: string, cause: Cause): JobWords {
  const [causeNote, correction] = outsideWords[cause] ?? [`${causes[cause].name}.`, "Explained to customer."];
  return { complaint: complaintWords(random, symptom), causeNote, correction };
}

function complaintWords(random: Random, symptom: string): string {
  const words = lower(symptomOf(symptom)?.name ?? symptom);
  const when = pickOne(random, [
    "since yesterday",
    "every load",
    "since the weekend",
    "now and then",
    "for about a week",
    "suddenly",
  ]);
  const text = `Customer: ${words}, ${when}.`;
  return happens(random, 0.12) ? `CUST ${words} ${when}`.toUpperCase() : text;
}

const outsideWords: Readonly<Partial<Record<Cause, readonly [causeNote: string, correction: string]>>> = {
  foreign_object: [
    "Object found in the pump or blower path, photographed. Part itself good.",
    "Removed object, ran test, normal.",
  ],
  suds_detergent: [
    "Tub full of suds, wrong detergent. Pump and board good.",
    "Ran rinse and drain, told customer which detergent and how much.",
  ],
  installation: ["Not installed as the sheet says. Appliance itself good.", "Corrected installation, tested."],
  supply: [
    "Supply to the appliance at fault. Appliance itself good.",
    "Told customer whom to call; tested after supply was restored.",
  ],
  surge_lightning: [
    "Board burnt at the line input, other devices in the house failed the same night.",
    "Quoted board, customer will ask insurer.",
  ],
  liquid_pest: ["Residue on the control, liquid got in from outside.", "Cleaned and dried, tested."],
  cosmetic: ["Dent and scratches, appliance works.", "Photographed for the dealer."],
  maintenance: ["Blocked by lint or dirt. Appliance itself good.", "Cleaned, tested, explained care."],
  misuse_accident: ["Broken by a blow or overload. No defect found.", "Explained to customer, quoted repair."],
  blockage_downstream: [
    "Pump delivers, house drain past the standpipe is blocked.",
    "Customer to call a plumber; drain test into bucket normal.",
  ],
  education: ["Works as designed. Customer unsure of the settings.", "Explained use."],
  no_fault_found: ["Could not make it fail. All tests pass.", "No part used. Ran full cycle, normal."],
  not_determined: ["Cause not established.", "Cleared code, to be watched."],
};

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
