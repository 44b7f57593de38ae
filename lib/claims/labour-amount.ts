import type { JobRecord } from "@/lib/domain/job";
import type { Policy } from "@/lib/domain/policy";
import type { TripPay } from "@/lib/domain/policy-pay";
import { centsInWords } from "./money-words";

export type Amount =
  | { readonly kind: "amount"; readonly cents: number; readonly basis: string }
  /** The policy pays what the job charged, and the job does not say. */
  | { readonly kind: "unknown"; readonly fix: string }
  | { readonly kind: "nothing" };

/** Labour by the payer's schedule, by hours times rate, or as charged up to the cap. */
export function labourAmount({ job }: JobRecord, policy: Policy): Amount {
  const { labour } = policy.pay;
  const { component } = job;
  switch (labour.kind) {
    case "schedule": {
      const found = labour.jobClasses.find((entry) => component !== undefined && entry.components.includes(component));
      const cents = found?.cents ?? labour.otherwiseCents;
      return amount(cents, `schedule, ${found?.name ?? "any other repair"}: ${centsInWords(cents, policy.currency)}`);
    }
    case "hours": {
      const found = labour.entries.find((entry) => entry.component === component)?.hours ?? labour.otherwiseHours;
      const hours = labour.capHours === undefined ? found : Math.min(found, labour.capHours);
      const rate = centsInWords(labour.centsPerHour, policy.currency);
      return amount(Math.round(hours * labour.centsPerHour), `schedule, ${hours} h at ${rate}`);
    }
    case "cost":
      return asCharged("labour", job.labour?.cents, labour.capCents, policy);
  }
}

export function tripAmount({ job }: JobRecord, policy: Policy): Amount {
  const { trip } = policy.pay;
  switch (trip.kind) {
    case "included":
      return { kind: "nothing" };
    case "flat":
      return amount(trip.cents, `flat: ${centsInWords(trip.cents, policy.currency)}`);
    case "cost":
      return asCharged("trip", job.trip?.cents, trip.capCents, policy);
    case "per_mile":
      return byTheMile(job.tripMiles, trip, policy);
  }
}

export function diagnosisAmount(policy: Policy): Amount {
  const { diagnosis } = policy.pay;
  if (diagnosis.kind === "none") return { kind: "nothing" };
  return amount(diagnosis.cents, `visit without a repair, flat: ${centsInWords(diagnosis.cents, policy.currency)}`);
}

function asCharged(name: string, charged: number | undefined, cap: number | undefined, { currency }: Policy): Amount {
  if (charged === undefined)
    return { kind: "unknown", fix: `Enter the ${name} charge of the job: the policy pays what was charged.` };
  if (cap === undefined || charged <= cap) return amount(charged, `as charged: ${centsInWords(charged, currency)}`);
  return amount(cap, `charged ${centsInWords(charged, currency)}, limited to ${centsInWords(cap, currency)}`);
}

/** Half a cent is rounded up, once. */
function byTheMile(
  miles: number | undefined,
  { centsPerMile, includedMiles, capCents }: Extract<TripPay, { kind: "per_mile" }>,
  { currency }: Policy,
): Amount {
  if (miles === undefined)
    return { kind: "unknown", fix: "Enter the miles of the job’s trips: the policy pays by the mile." };
  const paid = Math.max(0, miles - includedMiles);
  const cents = Math.round(paid * centsPerMile);
  const included = includedMiles === 0 ? "" : `, ${includedMiles} of them included`;
  const basis = `${miles} miles${included}: ${paid} at ${centsPerMile} cents`;
  if (capCents === undefined || cents <= capCents) return amount(cents, basis);
  return amount(capCents, `${basis}, limited to ${centsInWords(capCents, currency)}`);
}

function amount(cents: number, basis: string): Amount {
  return cents === 0 ? { kind: "nothing" } : { kind: "amount", cents, basis };
}
