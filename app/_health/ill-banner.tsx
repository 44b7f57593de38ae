"use client";
import { useEffect, useState } from "react";
import { StatusShape } from "@/app/_ui/status-word";
import { askWhatIsIll } from "./ask-what-is-ill";
import styles from "./ill-banner.module.css";

/** With the patience of one question this is under half a minute. Own choice. */
const everyMs = 15_000;

/**
 * Says on a page that was left open that the site is ill, and no longer when it is well. A check sheet on the way says
 * for itself what waits on the phone, and may be without signal for hours.
 */
export function IllBanner() {
  const [ills, setIlls] = useState<readonly string[]>([]);
  useEffect(() => {
    let gone = false;
    const look = async () => {
      if (document.visibilityState !== "visible") return;
      const found = isOnTheWay() ? [] : await askWhatIsIll();
      if (!gone) setIlls((before) => (before.join() === found.join() ? before : found));
    };
    const timer = setInterval(look, everyMs);
    document.addEventListener("visibilitychange", look);
    return () => {
      gone = true;
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, []);
  if (ills.length === 0) return null;
  return (
    <div role="alert" className={styles.banner}>
      <StatusShape status="act-now" />
      <div>
        {ills.map((ill) => (
          <p key={ill}>{ill}</p>
        ))}
      </div>
    </div>
  );
}

const isOnTheWay = () => /^\/sheet\/(job|asked)\//.test(window.location.pathname);
