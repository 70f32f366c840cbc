import type { Locator, Page } from '@playwright/test';
import { expect } from './app';

/** What a person points at on the screen, by the names a screen reader gives. */
export function limitHandle(page: Page): Locator {
  return page.getByRole('slider', { name: 'Show gap limit' });
}

export function figuresTable(page: Page): Locator {
  return page.getByRole('region', { name: 'Method by method, table' }).getByRole('table');
}

export function sheet(page: Page): Locator {
  return page.getByRole('article', { name: /^Sheet: / });
}

export const PAGES = ['Piece', 'Methods', 'Verdict', 'Joints', 'Test cuts', 'Explain'] as const;

export type PageName = (typeof PAGES)[number];

export async function showPage(page: Page, name: PageName): Promise<void> {
  const button = page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name });
  await button.click();
  await expect(button).toHaveAttribute('aria-current', 'page');
}

/** Saves a chart, drawing or table as one kind of file: SVG, PNG, CSV … */
export async function chooseSave(page: Page, what: string, kind: string): Promise<void> {
  await page.getByRole('button', { name: `Save “${what}”`, exact: true }).click();
  await page.getByRole('menuitem', { name: kind, exact: true }).click();
}

/** Waits until no figure is being refined any more. */
export async function settled(page: Page): Promise<void> {
  await expect(page.getByText('Settled.', { exact: true })).toBeVisible({ timeout: 120_000 });
}

/** Waits until no panel of the page is being worked out any more. */
export async function workedOut(page: Page): Promise<void> {
  const busy = page.locator(
    '.work-mark:is([data-standing=preview], [data-standing=refining], [data-standing=working])',
  );
  await expect(busy).toHaveCount(0, { timeout: 120_000 });
}

/** Every figure of the verdict's table, row by row. */
export async function figures(page: Page): Promise<string[]> {
  return figuresTable(page).getByRole('row').allInnerTexts();
}
