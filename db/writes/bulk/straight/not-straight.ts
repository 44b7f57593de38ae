/** Something of the load needs rows to be looked at one by one: nothing of it is kept, and the ordinary way takes the file from the start. */
export class NotStraight extends Error {
  override readonly name = "NotStraight";
}
