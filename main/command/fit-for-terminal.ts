import { safeText } from '../../sim/project/problem';

/** Text with every unprintable character but the line end shown as its code: names come from files, and files from anyone. */
export function fitForTerminal(text: string): string {
  return text
    .split('\n')
    .map((line) => safeText(line, Number.POSITIVE_INFINITY))
    .join('\n');
}
