import { authorizationCheck } from "../authorization-check";
import { claimAmounts } from "../claim-amounts";
import { coveredByPolicy } from "../claim-case";
import { checkOf, type FilingCase, type FilingCheck, onJob } from "./filing-case";

/** Over a limit without a number, or with one that had run out. Source of the limits: the policy; kinds are common practice, no source. */
export function authorizationChecked({ given }: FilingCase): FilingCheck {
  const { record, policy } = given;
  const found = authorizationCheck(record, policy, claimAmounts(record, coveredByPolicy(given).items, policy));
  switch (found.kind) {
    case "not_needed":
      return checkOf("authorization", onJob, [{ fine: "Under every limit of the policy: none is needed." }]);
    case "in_place":
      return checkOf("authorization", onJob, [{ fine: found.found }]);
    case "missing":
      return checkOf("authorization", onJob, [{ wrong: found.fix }]);
  }
}
