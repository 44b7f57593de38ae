"use client";

import { useRouter } from "next/navigation";
import { useEffect, useRef } from "react";
import { KeyList } from "./key-list";
import { places } from "./places";

interface Props {
  readonly on: boolean;
}

/** How long `g` waits for the letter of a place. */
const patienceMs = 1500;

/** Keys for people who live on the keyboard. Inert in fields, with any modifier, and when switched off in the View menu. */
export function SingleKeys({ on }: Props) {
  const router = useRouter();
  const list = useRef<HTMLElement>(null);
  useEffect(() => {
    if (!on) return;
    let goPressedAt = Number.NEGATIVE_INFINITY;
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isField(event.target)) return;
      const goes = event.timeStamp - goPressedAt < patienceMs;
      goPressedAt = event.key === "g" ? event.timeStamp : Number.NEGATIVE_INFINITY;
      const place = goes ? places.find(({ key }) => key === event.key) : undefined;
      if (place !== undefined) {
        event.preventDefault();
        router.push(place.href);
      } else if (event.key === "?") {
        list.current?.togglePopover();
      } else if (actOn(event.key)) {
        event.preventDefault();
      }
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, [on, router]);
  return on ? <KeyList ref={list} /> : null;
}

/** The first thing on the page that the key belongs to; false where the page has none. */
function actOn(key: string): boolean {
  const selector = targets[key];
  const target = selector === undefined ? null : document.querySelector<HTMLElement>(selector);
  if (target === null) return false;
  if (target instanceof HTMLInputElement) target.focus();
  else target.click();
  return true;
}

const targets: Readonly<Record<string, string>> = {
  "/": 'main input[type="search"]',
  "[": 'a[rel="prev"]',
  "]": 'a[rel="next"]',
  e: "a[data-export]",
};

function isField(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || target.matches("input, select, textarea");
}
