import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/**
 * Which accessibility rules the page breaks as it stands, of those that a machine can check.
 *
 * @param part what to look at alone, as a selector; left out: the whole page
 */
export async function brokenRules(page: Page, part?: string): Promise<string[]> {
  const axe = new AxeBuilder({ page });
  const { violations } = await (part ? axe.include(part) : axe.withTags(RULES)).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
}
