import { createHash } from 'node:crypto';

/** A text with a number and a mark by which half of it, or a mixture of two, is told from a whole one. */
export function numberedText(number: number, length: number): string {
  const body = `${number} ${String.fromCharCode(97 + (number % 26)).repeat(length)}`;
  return `${body} ${createHash('sha256').update(body).digest('hex')}`;
}

/** @returns the number of a whole text; null for anything else */
export function numberOf(text: string): number | null {
  const body = text.slice(0, -65);
  const isWhole = text.slice(-64) === createHash('sha256').update(body).digest('hex');
  return isWhole ? Number.parseInt(body, 10) : null;
}
