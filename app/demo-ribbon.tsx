import { connection } from "next/server";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import styles from "./demo-ribbon.module.css";

/** Said on every page of a company that does not exist, on paper too. */
export async function DemoRibbon() {
  await connection();
  return (await isDemo()) ? <p className={styles.ribbon}>Invented data for trying out</p> : null;
}

/** A page whose database cannot be reached has its own message; the ribbon then has nothing to add. */
async function isDemo(): Promise<boolean> {
  try {
    return (await readOnly(loadShop)).demo;
  } catch {
    return false;
  }
}
