/** The eight places in order of daily use, with the key that follows `g`. */
export const places = [
  { name: "Today", href: "/today", key: "t" },
  { name: "Jobs", href: "/jobs", key: "j" },
  { name: "Units", href: "/units", key: "u" },
  { name: "Repeats", href: "/repeats", key: "r" },
  { name: "Claims", href: "/claims", key: "c" },
  { name: "Parts", href: "/parts", key: "p" },
  { name: "Files in", href: "/files", key: "f" },
  { name: "Shop", href: "/shop", key: "s" },
] as const;

export type Place = (typeof places)[number];
