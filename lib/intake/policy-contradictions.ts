import type { Policy } from "@/lib/domain/policy";
import type { PolicyProblem } from "./parse-policy";

/** What each part of a policy allows and the whole does not. */
export function policyContradictions(policy: Policy): readonly PolicyProblem[] {
  return [...datesOf(policy), ...classesOf(policy), ...payerOf(policy), ...campaignsOf(policy), ...capsOf(policy)];
}

function datesOf({ effectiveFrom, effectiveTo }: Policy): PolicyProblem[] {
  if (effectiveTo === undefined || effectiveFrom <= effectiveTo) return [];
  return [{ pointer: "/effectiveTo", problem: `lies before the first day it governs, ${effectiveFrom}` }];
}

function classesOf({ classes, terms }: Policy): PolicyProblem[] {
  const keys = classes.map((entry) => entry.key);
  const twice = keys.flatMap((key, index) =>
    keys.indexOf(key) === index
      ? []
      : [{ pointer: `/classes/${index}/key`, problem: `names the class ${key} a second time` }],
  );
  const unknown = terms.flatMap(({ covers }, index) =>
    covers.kind !== "class" || keys.includes(covers.class)
      ? []
      : [
          {
            pointer: `/terms/${index}/covers/class`,
            problem: `names the class ${covers.class}, which /classes does not list`,
          },
        ],
  );
  return [...twice, ...unknown];
}

function payerOf({ payer, contract, start, maker }: Policy): PolicyProblem[] {
  const problems: PolicyProblem[] = [];
  if (payer.kind === "contract" && contract === undefined) {
    problems.push({ pointer: "/contract", problem: "is missing, though a contract pays" });
  }
  if (payer.kind !== "contract" && contract !== undefined) {
    problems.push({ pointer: "/contract", problem: `has no place where the payer is ${payer.kind}` });
  }
  if (payer.kind === "maker" && maker === undefined) {
    problems.push({ pointer: "/maker", problem: "is missing, though the maker pays" });
  }
  const ofContract = start.from.event === "contract_sale" || start.from.event === "maker_cover_end";
  if (payer.kind === "maker" && ofContract) {
    problems.push({ pointer: "/start/from/event", problem: "is a contract's start, but the maker pays" });
  }
  return problems;
}

function campaignsOf({ campaigns }: Policy): PolicyProblem[] {
  return campaigns.flatMap(({ startsOn, endsOn }, index) =>
    startsOn === undefined || endsOn === undefined || startsOn <= endsOn
      ? []
      : [{ pointer: `/campaigns/${index}/endsOn`, problem: `lies before its first day, ${startsOn}` }],
  );
}

function capsOf({ caps }: Policy): PolicyProblem[] {
  return caps.flatMap(({ from }, index) =>
    from === "maker_cover_end" || from === "contract_sale" || from === "previous_repair"
      ? [{ pointer: `/caps/${index}/from`, problem: "is not a date of the unit, so a cap cannot run from it" }]
      : [],
  );
}
