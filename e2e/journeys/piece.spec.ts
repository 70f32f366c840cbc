import { expect, test } from '../support/app';
import { showPage } from '../support/screen';

test('the saw settings follow the sides and the slope', async ({ page }) => {
  await showPage(page, 'Piece');
  const sentence = page.getByRole('heading', { level: 1 });
  await expect(sentence).toContainText('Tilt the blade 15°');
  await page.getByRole('checkbox', { name: 'Something round must fit inside' }).uncheck();
  await page.getByRole('textbox', { name: 'Sides, typed' }).fill('8');
  await page.getByRole('textbox', { name: 'Slope from upright, typed' }).fill('30');
  // Eight sides sloped 30°: tilt 19.35, swing 11.70 (the handbook formulas sin B = cos s · sin(180/N), tan M = sin s · tan(180/N)).
  await expect(sentence).toContainText('Tilt the blade 19.35°, swing the gauge 11.7°');
  await expect(page.getByText('70.65° from the table')).toBeVisible();
});

test('a ring is the same ring, whichever of its sizes describes it', async ({ page }) => {
  await showPage(page, 'Piece');
  const size = (name: string) => page.getByRole('textbox', { name });
  await expect(size('Across the outside flats')).toHaveValue('280');
  await page.getByRole('button', { name: 'Size known by' }).click();
  await page.getByRole('option', { name: 'Clear opening, narrow end' }).click();
  await expect(size('Clear opening, narrow end')).toHaveValue('250');
  await expect(page.getByRole('row', { name: 'Outside flats 280 mm' })).toBeVisible();
});

test('inches change what is shown and typed, and never the piece', async ({ page }) => {
  await showPage(page, 'Piece');
  await page.getByRole('radio', { name: 'Inches' }).check({ force: true });
  await page.getByRole('checkbox', { name: 'Fractions to 1/64' }).check();
  const thickness = page.getByRole('textbox', { name: 'Thickness', exact: true });
  await thickness.fill('5/8 in');
  await thickness.blur();
  await page.getByRole('radio', { name: 'Millimetres' }).check({ force: true });
  // An inch is 25.4 mm by definition (international yard and pound agreement, 1959).
  await expect(thickness).toHaveValue('15.875');
  await expect(page.getByRole('textbox', { name: 'Height along the face' })).toHaveValue('140');
});

test('angles are shown in degrees and minutes where that is wanted, and typed in either way', async ({ page }) => {
  await showPage(page, 'Piece');
  await page.getByRole('radio', { name: '22°30′' }).check({ force: true });
  await page.getByRole('checkbox', { name: 'Something round must fit inside' }).uncheck();
  await page.getByRole('textbox', { name: 'Sides, typed' }).fill('16');
  const sentence = page.getByRole('heading', { level: 1 });
  // Sixteen upright sides: 180°/16 = 11.25° = 11°15′.
  await expect(sentence).toContainText('Tilt the blade 11°15′');
  await expect(page.getByText('78°45′ from the table')).toBeVisible();
  const slope = page.getByRole('textbox', { name: 'Slope from upright, typed' });
  await slope.fill('7.5');
  await slope.blur();
  await expect(slope).toHaveValue('7°30′');
  await slope.fill("8°20'");
  await page.getByRole('radio', { name: '22.5°' }).check({ force: true });
  await expect(slope).toHaveValue('8.3333');
});

test('what could be cut badly is said before it is cut', async ({ page }) => {
  await showPage(page, 'Piece');
  const cautions = page.getByRole('region', { name: 'Before you cut' });
  await expect(cautions).toContainText('Usual cautions; your machine’s manual, local rules');
  await expect(cautions).toContainText('The stop stands on the side of the blade where the stave comes off');
  await expect(cautions).not.toContainText('mitre saw');
  await page.getByRole('textbox', { name: 'Height along the face' }).fill('260');
  await expect(page.getByText('Height 260 mm is a lot to crosscut')).toBeVisible();
  const danger = page.getByRole('alert').filter({ hasText: 'Danger' });
  await expect(danger).toHaveCount(0);
  await page.getByRole('textbox', { name: 'Length that must stay in hand' }).fill('149');
  await expect(danger).toHaveText(/only 149\smm is left to hold.*: fingers come too near the blade/);
});

for (const name of ['Methods', 'Test cuts', 'Joints'] as const) {
  test(`${name} says the cautions in a line that leads to all of them`, async ({ page }) => {
    await showPage(page, name);
    await expect(page.getByText('Usual cautions; your machine’s manual, local rules')).toHaveCount(1);
    await page.getByRole('button', { name: 'Before you cut, on Piece' }).click();
    const head = page.getByRole('heading', { name: 'Before you cut' });
    await expect(head).toBeFocused();
    await expect(head).toBeInViewport();
  });
}

test('the strips, the chance of a stave too few, every cut in order and the seasons stand on the page', async ({
  page,
}) => {
  await showPage(page, 'Piece');
  const order = page.getByRole('region', { name: 'Strips and cuts in their order' });
  await expect(order).toContainText(/comes up? short of a stave with a chance of .+ in [\d,]+/);
  await order.getByText('Every cut in its order', { exact: true }).click();
  // Sides swapped: two cuts a stave, twelve staves.
  await expect(order.getByRole('region', { name: 'Every cut in its order, table' }).getByRole('row')).toHaveCount(25);
  await order.getByRole('button', { name: 'Cut as' }).click();
  await page.getByRole('option', { name: 'Fixed stop', exact: true }).click();
  // Face turned over: one cut parts two staves, and the first cut makes a face alone.
  await expect(order.getByRole('region', { name: 'Every cut in its order, table' }).getByRole('row')).toHaveCount(14);
  const seasons = page.getByRole('region', { name: 'What the seasons do' });
  await expect(seasons).toContainText('Air at 20 °C going from 35 % to 65 % humidity');
  await expect(seasons).toContainText(/Flatsawn: were the joints free to move, each would open by up to/);
});
