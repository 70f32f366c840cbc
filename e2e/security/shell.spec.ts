/** What the built shell refuses, asked by a page that tries. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../main/ready.mjs';
import type {} from '../../renderer/host/electron-host';
import { expect, shellBehind, test } from '../support/app';

const FOREIGN = 'https://attacker.example/';

test('no page but its own is shown, whichever way it is asked for', async ({ page, complaints }) => {
  const shell = shellBehind(page);
  const shownAt = page.url();
  const addresses = {
    [FOREIGN]: FOREIGN,
    'http://127.0.0.1:9/': 'http://127.0.0.1:9/',
    // One that begins like the pages' own.
    'https://ringtrue.test.attacker.example/': 'app://ringtrue.attacker.example/',
  };
  for (const [address, refused] of Object.entries(addresses)) {
    const before = shell.refused.length;
    await page.evaluate((to) => {
      const link = document.createElement('a');
      link.href = to;
      document.body.append(link);
      link.click();
      link.remove();
    }, address);
    await expect.poll(() => shell.refused.slice(before)).toEqual([refused]);
    expect(page.url()).toBe(shownAt);
  }
  await expect(page.getByRole('textbox', { name: 'Title of the project' })).toBeVisible();
  complaints.length = 0;
});

test('no other window is opened', async ({ page, complaints }) => {
  const shell = shellBehind(page);
  const others = () =>
    page
      .context()
      .pages()
      .filter((each) => each !== page);
  const refused = () => shell.refused.filter((each) => each.startsWith('window'));
  for (const address of [FOREIGN, 'app-page.html', 'about:blank']) {
    const before = refused().length;
    await page.evaluate((to) => void window.open(to), address);
    await expect.poll(() => refused().length, address).toBe(before + 1);
    await expect.poll(() => others().length, address).toBe(0);
  }
  expect(refused()).toEqual([`window ${FOREIGN}`, 'window app://ringtrue/app-page.html', 'window about:blank']);
  complaints.length = 0;
});

test('no foreign page is shown within the page, and nothing is fetched from elsewhere', async ({
  page,
  complaints,
}) => {
  const inFrame = await page.evaluate(async (address) => {
    const frame = document.createElement('iframe');
    frame.src = address;
    document.body.append(frame);
    await new Promise((resolve) => setTimeout(resolve, 500));
    return frame.contentDocument?.body.innerHTML ?? 'foreign or refused';
  }, FOREIGN);
  expect(inFrame).not.toContain('attacker');
  const fetched = await page.evaluate((address) => fetch(address).then(() => 'fetched', String), FOREIGN);
  expect(fetched).toContain('TypeError');
  await expect.poll(() => complaints.join('\n')).toContain('Content Security Policy');
  complaints.length = 0;
});

test('no text becomes a program', async ({ page, complaints }) => {
  const ran = await page.evaluate(async () => {
    const script = document.createElement('script');
    script.textContent = 'window.hasRun = true';
    document.body.append(script);
    // Later: what a test evaluates itself is exempt from the page's policy.
    const evaluated = await new Promise((resolve) => {
      setTimeout(() => {
        try {
          resolve(new Function('return true')());
        } catch {
          resolve(false);
        }
      });
    });
    return { inline: 'hasRun' in window, evaluated };
  });
  expect(ran).toEqual({ inline: false, evaluated: false });
  complaints.length = 0;
});

test('no permission is granted', async ({ page, complaints }) => {
  const answers = await page.evaluate(async () => ({
    asked: await Notification.requestPermission(),
    notifications: (await navigator.permissions.query({ name: 'notifications' })).state,
    geolocation: (await navigator.permissions.query({ name: 'geolocation' })).state,
  }));
  expect(answers.asked).not.toBe('granted');
  expect(answers.notifications).not.toBe('granted');
  expect(answers.geolocation).not.toBe('granted');
  complaints.length = 0;
});

test('the pages have the verbs of the host, and nothing of Node or Electron', async ({ page }) => {
  const found = await page.evaluate(() => ({
    bridge: Object.keys(window.ringtrueHost ?? {}).length > 5 && Object.isFrozen(window.ringtrueHost),
    foreign: ['require', 'process', 'Buffer', 'module', 'global', 'electron', 'ipcRenderer'].filter(
      (name) => name in window,
    ),
  }));
  expect(found).toEqual({ bridge: true, foreign: [] });
});

test('the pages are told only sentences about files, and get to none that was not chosen', async ({ page }) => {
  const answers = await page.evaluate(async () => {
    const host = window.ringtrueHost;
    if (!host) throw new Error('no host');
    return {
      path: await host.reopen('/etc/passwd'),
      written: await host.save({ name: 'passwd', text: 'x', place: '/etc/passwd' }),
      made: await host.openDropped(new File(['x'], '/etc/passwd.json')),
      named: await host.openDropped(JSON.parse('"/etc/passwd.json"')).catch(() => 'refused'),
      unfit: await host.save(JSON.parse('{ "name": "", "path": "/etc/passwd" }')).catch(() => 'refused'),
    };
  });
  expect(answers.path).toEqual({ problem: expect.stringContaining('was not opened here') });
  expect(answers.written).toEqual({ problem: expect.stringContaining('was not opened here') });
  expect(answers.made).toBeNull();
  expect(answers.named).toBe('refused');
  expect(answers.unfit).toBe('refused');
});

test('the window keeps Node out, and the program asked for the sandbox', async ({ page }) => {
  const shell = shellBehind(page);
  expect(shell.did).toContain('sandbox');
  expect(shell.windowOptions.webPreferences).toMatchObject({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    webviewTag: false,
  });
  // Nothing else is set: no switch that loosens the pages' own rules, no feature that is not finished.
  expect(Object.keys(shell.windowOptions.webPreferences ?? {}).sort()).toEqual(
    ['contextIsolation', 'nodeIntegration', 'preload', 'sandbox', 'spellcheck', 'webviewTag'].sort(),
  );
});

test('the shell hands no address to other programs', async () => {
  expect(readFileSync(join(ROOT, 'dist', 'main', 'shell.js'), 'utf8')).not.toMatch(/openExternal|openPath/);
});

test('the program as packaged runs as nothing but itself', async () => {
  const settings = readFileSync(join(ROOT, 'electron-builder.yml'), 'utf8');
  for (const line of [
    'runAsNode: false',
    'enableNodeOptionsEnvironmentVariable: false',
    'enableNodeCliInspectArguments: false',
    'enableEmbeddedAsarIntegrityValidation: true',
    'onlyLoadAppFromAsar: true',
    'grantFileProtocolExtraPrivileges: false',
  ]) {
    expect(settings).toMatch(new RegExp(`^  ${line}$`, 'm'));
  }
});
