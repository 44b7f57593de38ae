import { expect, test } from "vitest";
import { payAgainstRetail } from "@/lib/claims/recovery/pay-against-retail";

const pump = { productType: "front_load_washer", component: "drain_pump", currency: "USD" } as const;
const lock = { ...pump, component: "door_lock" } as const;
const amounts = (...values: number[]) => values.map((value) => ({ value, count: 1 }));
const count = (given: readonly { readonly count: number }[]) => given.reduce((sum, each) => sum + each.count, 0);

test("a payer's work is held against retail work of the same component, product type and currency, and no other", () => {
  const paid = [
    { payer: "Hearth-Wick", ...lock, amounts: amounts(9000) },
    { payer: "Hearth-Wick", ...pump, amounts: amounts(9000, 9500) },
    { payer: "Ardent Cover", ...pump, amounts: amounts(7000) },
  ];
  const retail = [
    { ...pump, amounts: amounts(15000, 16000, 17000) },
    { ...pump, currency: "EUR" as const, amounts: amounts(1) },
    { ...lock, productType: "dishwasher" as const, amounts: amounts(2) },
  ];
  const found = payAgainstRetail({ paid, retail }, count);
  expect(found.map(({ payer, component, jobs, pays, retail: of }) => [payer, component, jobs, pays, of])).toEqual([
    ["Ardent Cover", "drain_pump", 1, 1, 3],
    ["Hearth-Wick", "drain_pump", 2, 2, 3],
    ["Hearth-Wick", "door_lock", 1, 1, 0],
  ]);
});
