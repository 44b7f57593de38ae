/** The eight places in order of daily use, with the key that follows `g` and the act that opening them is. */
export const places = [
  { name: "Today", href: "/today", key: "t", act: "today.see" },
  { name: "Jobs", href: "/jobs", key: "j", act: "jobs.see" },
  { name: "Units", href: "/units", key: "u", act: "units.see" },
  { name: "Repeats", href: "/repeats", key: "r", act: "repeats.see" },
  { name: "Claims", href: "/claims", key: "c", act: "claims.see" },
  { name: "Parts", href: "/parts", key: "p", act: "parts.see" },
  { name: "Files in", href: "/files", key: "f", act: "files.see" },
  { name: "Shop", href: "/shop", key: "s", act: "shop.see" },
] as const;

export type Place = (typeof places)[number];
