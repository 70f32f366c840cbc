/** Thrown while reading what somebody typed; the message is the sentence shown beside the field. */
export class NotUnderstood extends Error {
  override readonly name = 'NotUnderstood';
}
