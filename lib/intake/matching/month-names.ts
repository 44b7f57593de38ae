// First letters of the months in the languages in which exports come. Longer beginnings stand first where a shorter one
// would be another month.

const beginnings: readonly (readonly [string, number])[] = [
  ["juil", 7],
  ["juill", 7],
  ["juin", 6],
  ["jan", 1],
  ["gen", 1],
  ["ene", 1],
  ["jän", 1],
  ["feb", 2],
  ["fev", 2],
  ["fév", 2],
  ["mar", 3],
  ["mär", 3],
  ["mrt", 3],
  ["maa", 3],
  ["mrz", 3],
  ["apr", 4],
  ["avr", 4],
  ["abr", 4],
  ["mai", 5],
  ["may", 5],
  ["mag", 5],
  ["mei", 5],
  ["jun", 6],
  ["giu", 6],
  ["jul", 7],
  ["lug", 7],
  ["aug", 8],
  ["aoû", 8],
  ["aou", 8],
  ["ago", 8],
  ["sep", 9],
  ["set", 9],
  ["oct", 10],
  ["okt", 10],
  ["ott", 10],
  ["out", 10],
  ["nov", 11],
  ["dec", 12],
  ["déc", 12],
  ["dez", 12],
  ["dic", 12],
];

/** Number of the month whose name begins so, as text; undefined where none does. */
export function monthNumber(name: string | undefined): string | undefined {
  const plain = (name ?? "").toLowerCase();
  const found = beginnings.find(([beginning]) => plain.startsWith(beginning));
  return found === undefined ? undefined : String(found[1]);
}
