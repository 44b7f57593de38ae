import type { PayerKind } from "./job";

/** Who bore a job, as people read it. */
export const payerNames: Readonly<Record<PayerKind, string>> = {
  customer: "Customer",
  maker: "Maker",
  contract: "Contract",
  campaign: "Campaign",
  dealer: "Dealer",
  own_guarantee: "Own guarantee",
  goodwill: "Goodwill",
};
