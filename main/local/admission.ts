import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** Why a request is turned away; `reason` is one plain sentence. */
export interface Refusal {
  status: number;
  reason: string;
}

function unguessable(): string {
  return randomBytes(32).toString('base64url');
}

function isSame(given: string, wanted: string): boolean {
  const a = Buffer.from(given);
  const b = Buffer.from(wanted);
  return a.length === b.length && timingSafeEqual(a, b);
}

/**
 * Who may talk to the local host. Any web page the person has open, and any program on the machine, can reach a port of
 * 127.0.0.1, so each request must name this host, come from this host's own pages and carry the key that only the
 * window opened by the program was given.
 */
export class Admission {
  readonly #key = unguessable();
  /** Word in the address → whether it may be used again. */
  readonly #tickets = new Map<string, boolean>();
  readonly #host: string;
  readonly #cookieName: string;
  readonly origin: string;

  /** @param port the port the host listens on */
  constructor(port: number) {
    this.#host = `127.0.0.1:${port}`;
    this.origin = `http://${this.#host}`;
    // Cookies do not tell ports apart; the name must.
    this.#cookieName = `ringtrue-${port}`;
  }

  /**
   * An address that lets a browser in.
   *
   * @param use `once` for a browser started by the program, whose command line others on the machine can read;
   *   `often` for an address that is printed for the person
   */
  address(use: 'once' | 'often'): string {
    const ticket = unguessable();
    this.#tickets.set(ticket, use === 'often');
    return `${this.origin}/open/${ticket}`;
  }

  /** @returns why the request is refused whatever it asks for, or null */
  refuseStranger(request: IncomingMessage): Refusal | null {
    if (request.headers.host !== this.#host) return { status: 421, reason: `Only ${this.#host} is served here.` };
    const { origin } = request.headers;
    const writes = request.method !== 'GET' && request.method !== 'HEAD';
    if (origin === undefined ? writes : origin !== this.origin) {
      return { status: 403, reason: 'Only the pages of this program may ask.' };
    }
    return null;
  }

  /**
   * @param path the address path, `/open/…`
   * @returns the cookie to set, or null when the ticket is not valid
   */
  redeem(path: string, request: IncomingMessage): string | null {
    const given = path.slice('/open/'.length);
    for (const [ticket, often] of this.#tickets) {
      if (!isSame(given, ticket)) continue;
      if (!often) this.#tickets.delete(ticket);
      return `${this.#cookieName}=${this.#key}; HttpOnly; SameSite=Strict; Path=/`;
    }
    // A used ticket opened again in the browser that has the key already is no stranger.
    return this.hasKey(request) ? `${this.#cookieName}=${this.#key}; HttpOnly; SameSite=Strict; Path=/` : null;
  }

  hasKey(request: IncomingMessage): boolean {
    // Pages from another port of this machine count as the same site, so the cookie alone does not tell them apart.
    const site = request.headers['sec-fetch-site'];
    if (site !== undefined && site !== 'same-origin' && site !== 'none') return false;
    const cookies = (request.headers.cookie ?? '').split(';').map((cookie) => cookie.trim());
    return cookies.some((cookie) => isSame(cookie, `${this.#cookieName}=${this.#key}`));
  }
}
