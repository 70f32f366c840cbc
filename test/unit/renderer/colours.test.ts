import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/** Contrast after WCAG 2.2, "relative luminance" and "contrast ratio". */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

const css = readFileSync(new URL('../../../renderer/parts/tokens.css', import.meta.url), 'utf8');

/** The colour of a token in light and in dark. */
function token(name: string): { light: string; dark: string } {
  const value = new RegExp(`--${name}: ([^;]+);`).exec(css)?.[1] ?? '';
  const [light, dark] = value.match(/#[0-9a-f]{6}/g) ?? [];
  if (!light) throw new Error(`No colour --${name}`);
  return { light, dark: dark ?? light };
}

const GROUNDS = ['paper', 'sheet'];
const SCHEMES = ['light', 'dark'] as const;

test('black on white has the contrast 21 to 1, as WCAG says', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
});

test.each(['ink', 'ink-soft', 'accent', 'warning'])('text in %s reads at 4.5 to 1 on every ground', (name) => {
  for (const scheme of SCHEMES) {
    for (const ground of GROUNDS) {
      expect(contrast(token(name)[scheme], token(ground)[scheme])).toBeGreaterThanOrEqual(4.5);
    }
  }
});

test.each(['mark-a', 'mark-b', 'mark-c', 'mark-d', 'mark-e', 'mark-f', 'edge'])(
  '%s stands out at 3 to 1 from every ground',
  (name) => {
    for (const scheme of SCHEMES) {
      for (const ground of GROUNDS) {
        expect(contrast(token(name)[scheme], token(ground)[scheme])).toBeGreaterThanOrEqual(3);
      }
    }
  },
);

test('text on washes and on the accent reads at 4.5 to 1', () => {
  for (const scheme of SCHEMES) {
    expect(contrast(token('on-accent')[scheme], token('accent')[scheme])).toBeGreaterThanOrEqual(4.5);
    expect(contrast(token('ink')[scheme], token('accent-wash')[scheme])).toBeGreaterThanOrEqual(4.5);
    expect(contrast(token('ink-soft')[scheme], token('accent-wash')[scheme])).toBeGreaterThanOrEqual(4.5);
    expect(contrast(token('accent')[scheme], token('accent-wash')[scheme])).toBeGreaterThanOrEqual(4.5);
  }
});

test('a sheet has the colours of the light theme, whatever the window has', () => {
  const sheet = readFileSync(new URL('../../../renderer/report/sheet.css', import.meta.url), 'utf8');
  for (const name of ['ink', 'ink-soft', 'hairline', 'edge', 'accent', 'warning']) {
    expect(new RegExp(`--${name}: ([^;]+);`).exec(sheet)?.[1]).toBe(token(name).light);
  }
});
