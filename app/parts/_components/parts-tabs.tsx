import { PageTabs } from "@/app/_ui/page-tabs";

const tabs = [
  { key: "parts", name: "Parts", href: "/parts" },
  { key: "orders", name: "Order list", href: "/parts/orders" },
  { key: "trucks", name: "Trucks", href: "/parts/trucks" },
  { key: "idle", name: "Idle and last buys", href: "/parts/idle" },
  { key: "money", name: "Money", href: "/parts/money" },
] as const;
export type PartsTab = (typeof tabs)[number]["key"];

export function PartsTabs({ current }: { readonly current: PartsTab | undefined }) {
  return <PageTabs label="Pages on parts" tabs={tabs} current={current} />;
}
