import { request as httpRequest, type IncomingHttpHeaders } from 'node:http';

export interface RawAnswer {
  status: number;
  headers: IncomingHttpHeaders;
  text: string;
}

export interface RawRequest {
  method?: string;
  /** Sent as it is: nothing is tidied on the way. */
  path: string;
  headers?: Record<string, string>;
  body?: string | Iterable<Uint8Array>;
}

/** Sends a request exactly as given, which a browser or `fetch` would not. */
export function sendRaw(origin: string, { method = 'GET', path, headers = {}, body }: RawRequest): Promise<RawAnswer> {
  return new Promise((resolve, reject) => {
    const { hostname, port } = new URL(origin);
    const request = httpRequest({ hostname, port, method, path, headers, agent: false }, (response) => {
      const pieces: Buffer[] = [];
      response.on('data', (piece: Buffer) => pieces.push(piece));
      response.on('end', () => {
        const text = Buffer.concat(pieces).toString('utf8');
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text });
      });
      response.on('error', reject);
    });
    request.on('error', reject);
    if (body === undefined || typeof body === 'string') {
      request.end(body);
      return;
    }
    for (const piece of body) request.write(piece);
    request.end();
  });
}

/** Lets a client in through the address and gives back its cookie. */
export async function enter(origin: string, address: string): Promise<string> {
  const { headers } = await sendRaw(origin, { path: new URL(address).pathname });
  return headers['set-cookie']?.[0]?.split(';')[0] ?? '';
}
