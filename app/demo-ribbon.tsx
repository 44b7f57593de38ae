import { connection } from "next/server";
import { sessionOfRequest } from "@/app/_people/session-of-request";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import styles from "./demo-ribbon.module.css";

/** Said on every page of a company that does not exist, on paper too. Awaited with the page, so that nothing moves when it comes. */
export async function DemoRibbon() {
  await connection();
  if (!(await isDemo())) return null;
  return (
    <aside aria-label="About the data" className={styles.ribbon}>
      Invented data for trying out
    </aside>
  );
}

/** A page whose database cannot be reached has its own message; the ribbon then has nothing to add. */
async function isDemo(): Promise<boolean> {
  try {
    return (await sessionOfRequest())?.isDemo ?? (await readOnly(loadShop, { timeoutSeconds: 2 })).demo;
  } catch {
    return false;
  }
}
