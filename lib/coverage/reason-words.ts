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
  plan_not_for_unit: "the contract names a plan whose terms leave out this kind of unit: check the contract",
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
  contract_terms_unknown:
    "the terms of the contract’s plan are not on file for the day of its sale: enter them as a policy, or correct the plan",
};

export const problemWords: Readonly<Record<DataProblem, string>> = {
  no_such_date: "a date on file is no day of the calendar",
  unreadable_date: "a date on file cannot be read",
  purchase_before_manufacture: "it was bought before it was made: check serial and purchase date",
  delivery_before_manufacture: "it was delivered before it was made: check serial and delivery date",
  installation_before_manufacture: "it was installed before it was made: check serial and installation date",
  shipped_before_manufacture: "it was shipped before it was made: check serial and shipping date",
  registration_before_manufacture: "it was registered before it was made: check serial and registration date",
  reported_before_manufacture: "the trouble was reported before the unit was made: check serial and report date",
  reported_before_purchase: "the trouble was reported before the purchase: check both dates",
  visited_before_reported:
    "the first visit lies before the report, which a new booking may have overwritten: check both dates",
  completed_before_visited: "the job was completed before the first visit: check both dates",
  completed_before_reported: "the job was completed before the trouble was reported: check both dates",
  acquired_before_purchase: "a later owner took it over before it was bought: check both dates",
  transfer_registered_before_acquired:
    "the later owner was registered before taking it over: check both dates of the transfer",
  exchanged_before_purchase: "it was handed over in exchange before the first unit was bought: check both dates",
  repair_span_reversed: "it came back from a repair before it was handed over: check both days of that repair",
  contract_paper_reversed: "the contract’s paper states a last day before its first: check the contract",
  serial_removed: "the serial was removed from the unit",
};
