/** How many pages a PDF of our own printing has: its page objects stand in it as plain text. */
export function pageCount(pdf: Uint8Array): number {
  return (
    Buffer.from(pdf)
      .toString('latin1')
      .match(/\/Type\s*\/Page\b/g)?.length ?? 0
  );
}
