"use client";
import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";
import { Button } from "@/app/_ui/button";
import { formatCounted } from "@/lib/format/format-count";
import { ProgressLine } from "../../_components/progress-line";
import type { WorkProgress } from "../../_work/work-state";

interface Props {
  /** Address of the draft. */
  readonly address: string;
  readonly first: WorkProgress;
}

/** What the route `state` answers. */
interface State {
  readonly progress?: WorkProgress;
  /** Where to go when the work has ended. */
  readonly next?: string;
}

const pauseMs = 400;

/** Asks how far the work is until it has ended, and then goes on to where the file stands. */
export function WatchWork({ address, first }: Props) {
  const router = useRouter();
  const [progress, setProgress] = useState(first);
  const [stopping, setStopping] = useState(false);
  const [lost, setLost] = useState(false);

  useEffect(() => {
    const ended = new AbortController();
    void watch(address, ended.signal, {
      onProgress: setProgress,
      onLost: setLost,
      onEnd: (next) => router.replace(next),
    });
    return () => ended.abort();
  }, [address, router]);

  async function stop() {
    setStopping(true);
    await fetch(`${address}/stop`, { method: "POST" }).catch(() => setStopping(false));
  }

  return (
    <>
      <ProgressLine
        words={stopping ? "Stopping" : progress.words}
        done={progress.done}
        total={progress.total}
        amount={(count) => formatCounted(count, "row")}
      />
      <p role="status" className="only-heard">
        {stopping ? "Stopping" : progress.words}
        {progress.total !== undefined && progress.total > 0 && `, ${tenths(progress)} of ten parts done`}
      </p>
      {lost && <p role="alert">The site does not answer. The work goes on without this page; asking again…</p>}
      <p>
        <Button type="button" weight="plain" onClick={stop} disabled={stopping}>
          Stop
        </Button>
      </p>
    </>
  );
}

/** Said aloud at each tenth only: the exact count changes too often to be listened to. */
function tenths({ done, total = 0 }: WorkProgress): number {
  return Math.floor((10 * Math.min(done, total)) / total);
}

interface Watcher {
  readonly onProgress: (progress: WorkProgress) => void;
  readonly onLost: (lost: boolean) => void;
  readonly onEnd: (next: string) => void;
}

async function watch(address: string, signal: AbortSignal, { onProgress, onLost, onEnd }: Watcher): Promise<void> {
  while (!signal.aborted) {
    const state = await ask(address, signal);
    if (signal.aborted) return;
    onLost(state === undefined);
    if (state?.progress !== undefined) onProgress(state.progress);
    if (state?.next !== undefined) return onEnd(state.next);
    await new Promise((resolve) => setTimeout(resolve, pauseMs));
  }
}

async function ask(address: string, signal: AbortSignal): Promise<State | undefined> {
  try {
    const answer = await fetch(`${address}/state`, { signal, cache: "no-store" });
    return answer.ok ? ((await answer.json()) as State) : undefined; // our own route, which answers so
  } catch {
    return undefined;
  }
}
