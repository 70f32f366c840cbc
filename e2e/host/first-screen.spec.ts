import { expect, test } from '../support/app';

test('the first screen answers with figures before anything is typed', async ({ blank: page, openApp }) => {
  await openApp(page);
  await expect(page).toHaveTitle('Lantern base, twelve staves – Ringtrue');
  await expect(page.getByRole('main')).toContainText(/\d+ in (100|1,000)/);
});
