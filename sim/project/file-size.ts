/** How large a project file may be. A real one has a few kilobytes; the limit keeps a wrong file from filling the memory. */

export const LARGEST_FILE_BYTES = 20 * 1024 * 1024;

/**
 * @param name the file's name, as shown to the person
 * @param bytes its size
 * @returns the refusal in one sentence, or null when the size is allowed
 */
export function sizeProblem(name: string, bytes: number): string | null {
  if (bytes <= LARGEST_FILE_BYTES) return null;
  const megabytes = (size: number) => Math.ceil(size / (1024 * 1024));
  return `${name} has ${megabytes(bytes)} MB, more than the ${megabytes(LARGEST_FILE_BYTES)} MB a project file may have. Choose a Ringtrue project file.`;
}
