import type { Locator, Page } from '@playwright/test';
import { expect } from './app';

/** What a person points at on the screen, by the names a screen reader gives. */
export function limitHandle(page: Page): Locator {
  return page.getByRole('slider', { name: 'Show gap limit' });
}

export function figuresTable(page: Page): Locator {
  return page.getByRole('region', { name: 'Method by method, table' }).getByRole('table');
}

export type PageName = 'Piece' | 'Methods' | 'Verdict' | 'Joints' | 'Test cuts' | 'Explain';

export async function showPage(page: Page, name: PageName): Promise<void> {
  const button = page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name });
  await button.click();
  await expect(button).toHaveAttribute('aria-current', 'page');
}

/** Waits until no figure is being refined any more. */
export async function settled(page: Page): Promise<void> {
  await expect(page.getByText('Settled.', { exact: true })).toBeVisible({ timeout: 120_000 });
}

/** Every figure of the verdict's table, row by row. */
export async function figures(page: Page): Promise<string[]> {
  return figuresTable(page).getByRole('row').allInnerTexts();
}
