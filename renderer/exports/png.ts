/** A picture in pixels, drawn from its SVG by the browser itself. */
import type { Picture } from './picture';

/** Pixels of the file for each of the page's. */
const PNG_SCALE = 2;

/** @throws {Error} when the browser cannot draw so large a picture */
export async function pngOf({ svg, widthPx, heightPx }: Picture): Promise<Uint8Array<ArrayBuffer>> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = PNG_SCALE * widthPx;
    canvas.height = PNG_SCALE * heightPx;
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (blob === null) throw new Error(`A picture of ${canvas.width} by ${canvas.height} dots is too large.`);
    return new Uint8Array(await blob.arrayBuffer());
  } finally {
    URL.revokeObjectURL(address);
  }
}
