import { claimAmounts } from "../claim-amounts";
import { coveredByPolicy } from "../claim-case";
import { checkOf, type FilingCase, type FilingCheck, onJob } from "./filing-case";

/** What every payer's form asks for. Source: missing model, dates, customer details and codes are on a published maker's list of 1996. */
export function requiredFieldsChecked({ given }: FilingCase): FilingCheck {
  const { record } = given;
  const { job, unit } = record;
  const lacking = [
    ...(unit.model.trim() === "" ? ["the model with its suffix"] : []),
    ...(job.requestedOn === undefined ? ["the day of the call"] : []),
    ...(job.complaint.trim() === "" ? ["the complaint in the customer’s words"] : []),
    ...(job.causeNote.trim() === "" ? ["the cause: part, how it failed, the proof"] : []),
    ...(job.correction.trim() === "" ? ["the correction and the test after it"] : []),
    ...(job.symptom === undefined ? ["the symptom"] : []),
    ...(job.component === undefined ? ["the component"] : []),
  ];
  const { unknown } = claimAmounts(record, coveredByPolicy(given).items, given.policy);
  return checkOf("required_fields", onJob, [
    ...lacking.map((field) => ({ wrong: `Enter ${field}.` })),
    ...unknown.map((fix) => ({ wrong: fix })),
    {
      fine: "Customer’s name, address and phone are not kept here: the payer’s form asks for them.",
    },
  ]);
}
