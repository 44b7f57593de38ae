"use client";
import { useEffect, useRef, useState } from "react";
import { mostPacketClaims } from "@/app/_claims/most-packet-claims";
import { Button } from "@/app/_ui/button";

interface State {
  readonly words: string;
  /** Name of the download that is being made. */
  readonly run?: string;
}

/** Downloads the packets of the rows that are chosen in the form around it, and tells how far the making of them is. */
export function PacketsOfChosen() {
  const place = useRef<HTMLDivElement>(null);
  const [{ words, run }, setState] = useState<State>({ words: "" });

  useEffect(() => {
    if (run === undefined) return;
    const timer = setInterval(async () => {
      const progress = await progressOf(run);
      if (progress === undefined) return;
      const { done, total } = progress;
      setState(done === total ? { words: `${total} of ${total} made.` } : { words: `${done} of ${total} made`, run });
    }, 1000);
    return () => clearInterval(timer);
  }, [run]);

  function download() {
    const form = place.current?.closest("form");
    const chosen = form ? new FormData(form).getAll("chosen").map(String) : [];
    if (chosen.length === 0) return setState({ words: "Choose the claims first." });
    if (chosen.length > mostPacketClaims)
      return setState({ words: `${chosen.length} claims are chosen; up to ${mostPacketClaims} go into one download.` });
    const name = nameOfRun();
    const address = new URLSearchParams([...chosen.map((number) => ["chosen", number]), ["run", name]]);
    setState({ words: `0 of ${chosen.length} made`, run: name });
    window.location.assign(`/claims/packets.zip?${address}`);
  }

  return (
    <div ref={place} className="cluster">
      <Button type="button" weight="plain" onClick={download}>
        Download their packets
      </Button>
      <span className="small soft">
        One PDF a claim and all as JSON Lines, in a ZIP; up to {mostPacketClaims} claims.
      </span>
      <span role="status">{words}</span>
    </div>
  );
}

/** `randomUUID` is only there over HTTPS and on the computer itself; a shop's own network has neither. */
function nameOfRun(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))].map((part) => part.toString(36)).join("-");
}

async function progressOf(run: string): Promise<{ readonly done: number; readonly total: number } | undefined> {
  try {
    const response = await fetch(`/claims/packets.zip/progress?run=${encodeURIComponent(run)}`);
    return response.ok ? await response.json() : undefined;
  } catch {
    return undefined;
  }
}
