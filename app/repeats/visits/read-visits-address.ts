import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import { type VisitDimension, type VisitQuestion, visitDimensions } from "@/db/queries/visit-shares";
import { addDays, type Day } from "@/lib/calendar/day";

/** The question of an address; what cannot be read is left out with a notice. */
export function readVisitsAddress(
  values: AddressValues,
  cutOff: Day,
): { readonly question: VisitQuestion; readonly notices: readonly string[] } {
  const address = new AddressReader(values, ["by", "and", "from", "to"]);
  const hint = `Choose from ${visitDimensions.join(", ")}.`;
  const first = address.oneOf<VisitDimension>("by", visitDimensions, hint) ?? "type";
  const second = address.oneOf<VisitDimension>("and", visitDimensions, hint);
  const to = address.dayOf("to");
  let from = address.dayOf("from");
  const until = to === undefined || to >= cutOff ? cutOff : addDays(to, 1);
  if (from !== undefined && from >= until) {
    address.note(`The period is empty: “from” ${from} is not before ${until}. “from” was left out.`);
    from = undefined;
  }
  return {
    question: { by: second === undefined || second === first ? [first] : [first, second], from, until },
    notices: address.notices,
  };
}

export const visitDimensionNames: Readonly<Record<VisitDimension, string>> = {
  component: "Component",
  model: "Model",
  maker: "Maker",
  type: "Appliance",
  symptom: "Symptom",
  cause: "Cause",
  payer: "Payer",
  quarter: "Quarter",
  technician: "Technician",
};
