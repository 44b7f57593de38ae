// How long a flow takes at the phone, from what was touched and typed: the keystroke-level model. It foretells somebody who knows
// the sheet and errs nowhere; measuring, walking and what the page itself takes are not in it.

/** What a hand did. */
export interface Touches {
  /** Buttons, links, choices. */
  readonly taps: number;
  /** Fields that were touched to type in them. */
  readonly fields: number;
  /** Characters typed. */
  readonly keys: number;
  /** Pictures taken; their buttons on the page are among the taps. */
  readonly photos: number;
  /** Words on the screens that were walked through. */
  readonly words: number;
}

/**
 * Seconds. Card, Moran and Newell 1980, Communications of the ACM 23, 396-410, from memory: pressing a key 0.28 for an average
 * typist and 0.75 where codes are typed, pointing 1.10, bringing the hand to a device 0.40, making up one's mind 1.35.
 */
const operator = { press: 0.28, typeCode: 0.75, point: 1.1, home: 0.4, think: 1.35 } as const;
/** Until a phone's camera shows a picture: own guess. */
const cameraOpens = 2;
/** Words read in silence in a minute: Brysbaert 2019, Journal of Memory and Language 109, 104047, from memory. */
const wordsInMinute = 238;

export interface TimeAtPhone {
  readonly seconds: number;
  /** Where every word of every screen is read as well, as on the first day. */
  readonly secondsReadingAll: number;
}

/** Each tap is thought about, each photo means raising the phone, waiting for the camera and one tap more. */
export function timeAtPhone({ taps, fields, keys, photos, words }: Touches): TimeAtPhone {
  const tap = operator.think + operator.point + operator.press;
  const field = operator.point + operator.press;
  const photo = operator.home + cameraOpens + tap;
  const seconds = taps * tap + fields * field + keys * operator.typeCode + photos * photo;
  return { seconds, secondsReadingAll: seconds + (60 * words) / wordsInMinute };
}

/** For the log of a run: the figure with what it is made of. */
export function describeTime(touches: Touches): string {
  const { seconds, secondsReadingAll } = timeAtPhone(touches);
  const { taps, fields, keys, photos, words } = touches;
  return (
    `${Math.round(seconds)} s at the phone (${Math.round(secondsReadingAll)} s reading all ${words} words): ` +
    `${taps} taps, ${fields} fields, ${keys} characters, ${photos} photos`
  );
}
