import type { IncomingMessage } from 'node:http';
import { LARGEST_FILE_BYTES } from '../../sim/project/file-size';

/**
 * @param request a request whose body is text
 * @returns the body, or null as soon as it proves larger than a project file may be
 * @throws {TypeError} when it is not UTF-8
 */
export async function readBody(request: IncomingMessage): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > LARGEST_FILE_BYTES) return null;
  const pieces: Buffer[] = [];
  let bytes = 0;
  for await (const piece of request as AsyncIterable<Buffer>) {
    bytes += piece.length;
    if (bytes > LARGEST_FILE_BYTES) return null;
    pieces.push(piece);
  }
  return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(pieces));
}
