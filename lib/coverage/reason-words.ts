import type { DataProblem, EvidenceReason, NotCoveredReason } from "./coverage-decision";

/** Reasons as half sentences that follow a colon. */
export const notCoveredWords: Readonly<Record<NotCoveredReason, string>> = {
  term_ended: "the term has ended",
  not_started: "the term had not begun",
  waiting_period: "still in the waiting period",
  item_not_paid: "the terms do not pay this item",
  component_not_in_terms: "the terms do not reach this component",
  cause_excluded: "the cause lies outside the part, which the terms do not pay",
  component_excluded: "the terms leave this component out",
  use_excluded: "the terms leave out this use",
  territory_excluded: "the terms do not hold where the unit stands",
  transfer_excluded: "the terms did not pass to this owner",
  contract_cancelled: "the contract had been cancelled",
  outside_campaign: "the campaign does not name this unit and component",
  no_policy: "no terms on file speak of this unit",
};

export const evidenceWords: Readonly<Record<EvidenceReason, string>> = {
  start_unknown: "nothing on file says when the term began",
  ends_differ: "the start is known only as a range, and its two ends give different answers",
  placeholder_date: "the date on file stands for unknown",
  ambiguous_date: "the date on file reads two ways",
  purchase_equals_job_date: "the purchase date is the job's own date, so it was probably typed in",
  serial_unknown: "the serial is not on file",
  component_unknown: "the failed component is not on file",
  cause_unknown: "the cause is not on file",
  territory_unknown: "where the unit stands is not on file",
  transfer_date_unknown: "nothing says when this owner took the unit over",
  transfer_can_be_registered: "the new owner is not registered yet and was still in time to be",
  registration_unsure: "nothing on file says on which day the unit was registered, and that day decides",
  decisive_day_unknown: "the day that decides is not on file",
};

export const problemWords: Readonly<Record<DataProblem, string>> = {
  no_such_date: "a date on file is no day of the calendar",
  unreadable_date: "a date on file cannot be read",
  purchase_before_manufacture: "it was bought before it was made: check serial and purchase date",
  delivery_before_manufacture: "it was delivered before it was made: check serial and delivery date",
  installation_before_manufacture: "it was installed before it was made: check serial and installation date",
  reported_before_purchase: "the trouble was reported before the purchase: check both dates",
  completed_before_reported: "the job was completed before the trouble was reported: check both dates",
  serial_removed: "the serial was removed from the unit",
};
