/** How large an exported file may be: a million rings fit, and no file fills the memory. */
export const LARGEST_EXPORT_BYTES = 128 * 1024 * 1024;

/**
 * @param name the file's name, as shown to the person
 * @param bytes its size
 * @returns the refusal in one sentence, or null when the size is allowed
 */
export function exportSizeProblem(name: string, bytes: number): string | null {
  if (bytes <= LARGEST_EXPORT_BYTES) return null;
  const megabytes = (size: number) => Math.ceil(size / (1024 * 1024));
  return `${name} would have ${megabytes(bytes)} MB, more than the ${megabytes(LARGEST_EXPORT_BYTES)} MB an exported file may have. Simulate fewer rings, or make the window narrower.`;
}
