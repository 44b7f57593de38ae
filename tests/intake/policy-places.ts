/** What of a published schema says where values stand. */
export interface Described {
  readonly properties?: Readonly<Record<string, Described>>;
  readonly items?: Described;
  readonly anyOf?: readonly Described[];
  readonly oneOf?: readonly Described[];
}

/** Every place of a document that holds a value, with `*` for a row of a list; lists of plain words are one value. */
export function places({ properties, items, anyOf = [], oneOf = [] }: Described, at: string): readonly string[] {
  const under = [
    ...Object.entries(properties ?? {}).flatMap(([name, part]) => places(part, at === "" ? name : `${at}.${name}`)),
    ...(items === undefined ? [] : places(items, `${at}.*`).filter((place) => place !== `${at}.*`)),
    ...[...anyOf, ...oneOf].flatMap((one) => places(one, at)).filter((place) => place !== at),
  ];
  return under.length === 0 ? [at] : under;
}

/** The values of a document by their place. */
export function valuesByPlace(value: unknown, at = ""): readonly (readonly [place: string, value: unknown])[] {
  if (Array.isArray(value))
    return value.flatMap((item) => (isGroup(item) ? valuesByPlace(item, `${at}.*`) : [[at, item] as const]));
  if (!isGroup(value)) return value === undefined ? [] : [[at, value]];
  return Object.entries(value).flatMap(([name, part]) => valuesByPlace(part, at === "" ? name : `${at}.${name}`));
}

function isGroup(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}
