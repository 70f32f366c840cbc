/** What a file of a project is called. */
const EXTENSION = '.ringtrue.json';

/** A file name made of the title: letters, digits and dashes. */
export function fileNameFor(title: string): string {
  const stem = title
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem || 'project'}${EXTENSION}`;
}
