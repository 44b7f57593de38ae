import Link from "next/link";
import styles from "./parts-tabs.module.css";

const tabs = [
  { key: "parts", name: "Parts", href: "/parts" },
  { key: "orders", name: "Order list", href: "/parts/orders" },
  { key: "trucks", name: "Trucks", href: "/parts/trucks" },
  { key: "idle", name: "Idle and last buys", href: "/parts/idle" },
  { key: "money", name: "Money", href: "/parts/money" },
] as const;
export type PartsTab = (typeof tabs)[number]["key"];

export function PartsTabs({ current }: { readonly current: PartsTab | undefined }) {
  return (
    <nav aria-label="Pages on parts" className="no-print">
      <ul className={styles.tabs}>
        {tabs.map(({ key, name, href }) => (
          <li key={key}>
            <Link href={href} className={styles.tab} aria-current={key === current ? "page" : undefined}>
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
