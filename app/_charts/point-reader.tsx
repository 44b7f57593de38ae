"use client";

import { useRouter } from "next/navigation";
import { type KeyboardEvent, type MouseEvent, type ReactNode, useRef, useState } from "react";
import styles from "./point-reader.module.css";

export interface ReadPoint {
  /** The whole point in words: name, number, range, count. */
  readonly text: string;
  /** The jobs behind it. */
  readonly href?: string | undefined;
}

interface Props {
  /** What the drawing shows. */
  readonly label: string;
  readonly points: readonly ReadPoint[];
  /** The drawing; the marks of point i carry `data-point={i}`. */
  readonly children: ReactNode;
}

/** Makes a drawing readable point by point: one tab stop, arrow keys, a tap; what is chosen is shown and said. */
export function PointReader({ label, points, children }: Props) {
  const router = useRouter();
  const drawing = useRef<HTMLDivElement>(null);
  const [current, setCurrent] = useState<number>();
  const point = current === undefined ? undefined : points[current];

  const choose = (index: number | undefined) => {
    setCurrent(index);
    for (const mark of drawing.current?.querySelectorAll("[data-point]") ?? []) {
      mark.toggleAttribute("data-current", index !== undefined && mark.getAttribute("data-point") === String(index));
    }
  };
  const press = (event: KeyboardEvent) => {
    if (event.key === "Enter" && point?.href !== undefined) return router.push(point.href);
    const next = nextPoint(event.key, current, points.length);
    if (next === "none") return;
    event.preventDefault();
    choose(next);
  };
  const tap = (event: MouseEvent) => {
    const mark = event.target instanceof Element ? event.target.closest("[data-point]") : null;
    if (mark !== null) choose(Number(mark.getAttribute("data-point")));
  };

  return (
    <div className={styles.reader}>
      <div
        ref={drawing}
        role="application"
        aria-roledescription="chart"
        aria-label={`${label}. ${points.length} points, read with the left and right arrow keys; the table below holds the same.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: its one tab stop
        tabIndex={0}
        className={styles.drawing}
        onKeyDown={press}
        onClick={tap}
      >
        {children}
      </div>
      <output aria-live="polite" className={styles.spoken}>
        {point?.text ?? ""}
      </output>
    </div>
  );
}

/** "none" where the key is not ours; undefined leaves the points. */
function nextPoint(key: string, current: number | undefined, count: number): number | undefined | "none" {
  if (count === 0) return "none";
  switch (key) {
    case "ArrowRight":
    case "ArrowDown":
      return current === undefined ? 0 : Math.min(count - 1, current + 1);
    case "ArrowLeft":
    case "ArrowUp":
      return current === undefined ? count - 1 : Math.max(0, current - 1);
    case "Home":
      return 0;
    case "End":
      return count - 1;
    case "Escape":
      return undefined;
    default:
      return "none";
  }
}
