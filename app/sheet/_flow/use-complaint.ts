"use client";
import { useEffect, useState } from "react";

/** The complaint as the desk took it, asked for while there is signal and never kept on the device: it may name the customer. */
export function useComplaint(jobNumber: string): string | undefined {
  const [complaint, setComplaint] = useState<string>();
  useEffect(() => {
    const stop = new AbortController();
    fetch(`/sheet/job/${encodeURIComponent(jobNumber)}/complaint`, { cache: "no-store", signal: stop.signal })
      .then(async (response) => (response.ok ? ((await response.json()) as { complaint?: unknown }) : {}))
      .then(({ complaint: text }) => typeof text === "string" && setComplaint(text))
      .catch(() => {}); // without signal it stays at the desk
    return () => stop.abort();
  }, [jobNumber]);
  return complaint;
}
