/** Gives the person a file through the browser's downloads. */
export function handOverDownload(name: string, contents: Blob): void {
  const address = URL.createObjectURL(contents);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
