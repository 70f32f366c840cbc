import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, expect } from '@playwright/test';
import type { LocalHost } from '../../main/local/local-host';
import { enter, type RawAnswer, sendRaw } from '../../test/support/raw-request';
import { emptyStateFolder, startBuiltHost } from '../support/built-host';

const BEFORE = '{ "title": "as it was" }';

/** A host started with a file, and a client that was let in. */
const test = base.extend<{
  folder: string;
  stateFolder: string;
  file: string;
  host: LocalHost;
  cookie: string;
  place: string;
}>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright wants the pattern even where nothing is taken.
  folder: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'ringtrue-security-'));
    await use(folder);
    rmSync(folder, { recursive: true, force: true });
  },
  // biome-ignore lint/correctness/noEmptyPattern: see above.
  stateFolder: async ({}, use) => {
    const folder = emptyStateFolder();
    await use(folder);
    rmSync(folder, { recursive: true, force: true });
  },
  file: async ({ folder }, use) => {
    const file = join(folder, 'piece.ringtrue.json');
    writeFileSync(file, BEFORE);
    await use(file);
  },
  host: async ({ file, stateFolder }, use) => {
    const host = await startBuiltHost(file, stateFolder);
    await use(host);
    await host.close();
  },
  cookie: async ({ host }, use) => use(await enter(host.origin, host.address('often'))),
  place: async ({ host, cookie }, use) => {
    const { text } = await sendRaw(host.origin, { path: '/api/start-file', headers: { cookie } });
    await use(JSON.parse(text).place);
  },
});

function save(host: LocalHost, headers: Record<string, string>, body = 'new text'): Promise<RawAnswer> {
  return sendRaw(host.origin, {
    method: 'POST',
    path: '/api/save',
    headers: { origin: host.origin, ...headers },
    body,
  });
}

test.describe('who is let in', () => {
  test('the address of the program, by a cookie that scripts and other sites never get', async ({ host }) => {
    const { status, headers } = await sendRaw(host.origin, { path: new URL(host.address('once')).pathname });
    expect(status).toBe(303);
    expect(headers.location).toBe('/');
    expect(headers['set-cookie']?.[0]).toMatch(/^ringtrue-\d+=[\w-]{43}; HttpOnly; SameSite=Strict; Path=\/$/);
  });

  test('nobody without the cookie, whatever is asked', async ({ host }) => {
    for (const path of ['/', '/index.html', '/api/start-file', '/open/', '/open/guess', '/favicon.svg']) {
      expect((await sendRaw(host.origin, { path })).status, path).toBe(403);
    }
  });

  test('nobody with a wrong cookie, or the cookie of another port', async ({ host, cookie }) => {
    const [name, key] = cookie.split('=');
    for (const wrong of [`${name}=guess`, `${name}=`, `${name}-1=${key}`, `ringtrue-1=${key}`]) {
      expect((await sendRaw(host.origin, { path: '/', headers: { cookie: wrong } })).status, wrong).toBe(403);
    }
  });

  test('an address for one browser works once', async ({ host }) => {
    const path = new URL(host.address('once')).pathname;
    expect((await sendRaw(host.origin, { path })).status).toBe(303);
    expect((await sendRaw(host.origin, { path })).status).toBe(403);
  });

  test('only who asks for this very host: a name that was pointed at 127.0.0.1 is refused', async ({
    host,
    cookie,
  }) => {
    const { port } = new URL(host.origin);
    for (const wrong of [
      `attacker.example:${port}`,
      `localhost:${port}`,
      '127.0.0.1',
      `127.0.0.1:${Number(port) + 1}`,
    ]) {
      const answer = await sendRaw(host.origin, { path: '/', headers: { cookie, host: wrong } });
      expect(answer.status, wrong).toBe(421);
    }
  });

  test('only pages of this host: another origin is refused even with the cookie', async ({ host, cookie }) => {
    const { port } = new URL(host.origin);
    const others = ['https://attacker.example', 'null', 'http://127.0.0.1:1', `http://localhost:${port}`];
    for (const origin of others) {
      expect((await sendRaw(host.origin, { path: '/', headers: { cookie, origin } })).status, origin).toBe(403);
    }
    for (const site of ['cross-site', 'same-site']) {
      const headers = { cookie, 'sec-fetch-site': site };
      expect((await sendRaw(host.origin, { path: '/api/start-file', headers })).status, site).toBe(403);
    }
  });
});

test.describe('what is served', () => {
  test('the pages, with headers that keep everything foreign out', async ({ host, cookie }) => {
    const { status, headers } = await sendRaw(host.origin, { path: '/', headers: { cookie } });
    expect(status).toBe(200);
    const policy = String(headers['content-security-policy']).split('; ');
    for (const rule of [
      "default-src 'self'",
      "script-src 'self'",
      "worker-src 'self'",
      "connect-src 'self'",
      "object-src 'none'",
      "base-uri 'none'",
      "form-action 'none'",
      "frame-ancestors 'none'",
    ]) {
      expect(policy).toContain(rule);
    }
    const scripts = policy.filter((rule) => /^(default|script|worker|connect)-src/.test(rule)).join(' ');
    expect(scripts).not.toMatch(/unsafe|data:|blob:|https?:|\*/);
    expect(headers['cross-origin-opener-policy']).toBe('same-origin');
    expect(headers['cross-origin-embedder-policy']).toBe('require-corp');
    expect(headers['cross-origin-resource-policy']).toBe('same-origin');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['access-control-allow-origin']).toBeUndefined();
  });

  test('nothing outside the built pages, however the address is spelt', async ({ host, cookie }) => {
    for (const path of [
      '/../package.json',
      '/../../../../../../etc/passwd',
      '/assets/../../main/local.js',
      '/%2e%2e/%2e%2e/package.json',
      '/..%2f..%2fetc%2fpasswd',
      '/..\\..\\package.json',
      '//etc/passwd',
      '/index.html/../../package.json',
      '/assets/',
      '/index.html%00.js',
    ]) {
      const { status, text } = await sendRaw(host.origin, { path, headers: { cookie } });
      expect(status, path).toBe(404);
      expect(text, path).not.toContain('"version"');
    }
  });

  test('only with verbs that read, save for saving', async ({ host, cookie }) => {
    const headers = { cookie, origin: host.origin };
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS']) {
      expect((await sendRaw(host.origin, { method, path: '/', headers })).status, method).toBe(405);
    }
    expect((await sendRaw(host.origin, { path: '/api/save', headers })).status).toBe(405);
    const head = await sendRaw(host.origin, { method: 'HEAD', path: '/', headers });
    expect([head.status, head.text]).toEqual([200, '']);
  });
});

test.describe('what is written', () => {
  test('the file named at the start, whole, and in its folder nothing else but its version before', async ({
    host,
    cookie,
    place,
    file,
    folder,
  }) => {
    const answer = await save(host, { cookie, 'x-ringtrue-place': place }, '{ "title": "Ø 280 mm" }');
    expect(JSON.parse(answer.text)).toEqual({ name: 'piece.ringtrue.json', place });
    expect(readFileSync(file, 'utf8')).toBe('{ "title": "Ø 280 mm" }');
    expect(readdirSync(folder).sort()).toEqual(['piece.previous.ringtrue.json', 'piece.ringtrue.json']);
  });

  test('nowhere else: a path or a guess is no place', async ({ host, cookie, file, folder }) => {
    for (const place of [file, join(folder, 'other.json'), '../other.json', 'guess', '']) {
      const answer = await save(host, { cookie, 'x-ringtrue-place': place });
      expect(answer.status, place).toBe(409);
      expect(JSON.parse(answer.text).problem).toContain('was not opened here');
    }
    expect((await save(host, { cookie })).status).toBe(409);
    expect(readdirSync(folder)).toEqual(['piece.ringtrue.json']);
    expect(readFileSync(file, 'utf8')).toBe(BEFORE);
  });

  test('nothing for a stranger: no cookie, no origin, another origin', async ({ host, cookie, place, file }) => {
    const there = { 'x-ringtrue-place': place };
    expect((await save(host, there)).status).toBe(403);
    expect((await save(host, { ...there, cookie, origin: 'https://attacker.example' })).status).toBe(403);
    const without = { method: 'POST', path: '/api/save', headers: { ...there, cookie }, body: 'new text' };
    expect((await sendRaw(host.origin, without)).status).toBe(403);
    expect(readFileSync(file, 'utf8')).toBe(BEFORE);
  });

  test('nothing larger than a project file, announced or not', async ({ host, cookie, place, file }) => {
    const headers = { cookie, origin: host.origin, 'x-ringtrue-place': place };
    const announced = { ...headers, 'content-length': String(21 * 1024 * 1024) };
    const first = { method: 'POST', path: '/api/save', headers: announced, body: [new Uint8Array(10)] };
    expect((await sendRaw(host.origin, first).catch(() => null))?.status).toBe(413);
    const megabyte = new Uint8Array(1024 * 1024).fill(0x20);
    const unannounced = { method: 'POST', path: '/api/save', headers, body: Array<Uint8Array>(25).fill(megabyte) };
    // The host may hang up while the rest is still on its way; either way nothing is written.
    expect((await sendRaw(host.origin, unannounced).catch(() => ({ status: 413 }))).status).toBe(413);
    expect(readFileSync(file, 'utf8')).toBe(BEFORE);
    expect((await save(host, { cookie, 'x-ringtrue-place': place })).status).toBe(200);
  });
});
