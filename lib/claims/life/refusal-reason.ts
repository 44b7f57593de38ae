/**
 * Our own list of why payers refuse or cut a claim. Payers' wordings differ and are kept as they came; each is
 * mapped to one of these. Source: the reasons a published maker's list of 1996 gives, and common practice, no source.
 */
export const refusalReasons = {
  part_not_verified: "Part number, distributor, invoice or cost does not match",
  part_not_on_model: "Part is not used in this model",
  purchase_date: "Purchase date missing, wrong, or not the one on the payer's record",
  serial_or_model: "Serial or model wrong, or registered otherwise",
  out_of_term: "Out of term on the date that counts",
  repeat: "Repeat of an earlier repair",
  duplicate: "Claimed before",
  late: "Filed too late",
  codes_disagree: "Complaint, cause and part do not agree",
  no_authorization: "No authorization, or expired",
  excluded: "Not a warranty item, or an excluded cause",
  customer_details: "Customer's details missing",
  not_authorized_servicer: "Servicer not authorized for this product",
  exchange_only: "Unit is exchanged, not repaired",
  documents_missing: "Documents missing or illegible",
  part_not_returned: "Failed part not returned, or returned late",
  over_schedule: "Amount above the payer's schedule",
  other: "Another reason",
} as const;

export type RefusalReason = keyof typeof refusalReasons;
export const refusalReasonKeys = Object.keys(refusalReasons) as readonly RefusalReason[]; // Object.keys loses the key type
