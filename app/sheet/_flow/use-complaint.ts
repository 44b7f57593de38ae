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

/** True where the server has it: a changed complaint is never kept on the device to be sent later. */
export async function sendComplaint(jobNumber: string, complaint: string): Promise<boolean> {
  try {
    const response = await fetch(`/sheet/job/${encodeURIComponent(jobNumber)}/complaint`, {
      method: "POST",
      body: JSON.stringify({ complaint }),
      headers: { "Content-Type": "application/json" },
    });
    return response.ok;
  } catch {
    return false;
  }
}

export const complaintWaits =
  "The complaint was changed and could not be sent. It may name the customer, so it never waits on this phone: close with signal, or go back and open the page again to leave it as the desk took it.";
