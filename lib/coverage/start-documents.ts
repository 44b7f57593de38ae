import type { StartEvent } from "@/lib/domain/policy-start";
import type { ProofDocument } from "./coverage-decision";

/** The paper that would settle a start: what payers accept for each event. Common practice, no source. */
export const startDocuments: Readonly<Record<StartEvent, ProofDocument>> = {
  purchase: "proof_of_purchase",
  delivery: "delivery_note",
  installation: "installation_record",
  occupancy: "closing_paper",
  first_use: "installation_record",
  registration: "registration_record",
  shipped: "proof_of_purchase",
  manufacture: "proof_of_purchase",
  contract_sale: "contract",
  maker_cover_end: "proof_of_purchase",
  previous_repair: "visit_record",
};
