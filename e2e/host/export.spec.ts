import { readTable } from '../../test/support/read-csv';
import { expect, test } from '../support/app';
import { chooseSave, figuresTable, settled } from '../support/screen';

test('a table goes where it was told to, with what stands on the screen', async ({ page, desk }, info) => {
  await settled(page);
  const save = () => chooseSave(page, 'Method by method', 'CSV');
  const { offered, bytes } = await desk.takeFile(page, save, info.outputPath('methods.csv'));
  expect(offered).toMatch(/\.csv$/);
  const { rows, origin } = readTable(bytes.toString('utf8'));
  expect(origin.Table).toBe('Method by method');
  const names = await figuresTable(page).getByRole('rowheader').allInnerTexts();
  expect(rows).toHaveLength(names.length);
  rows.forEach(([name], k) => {
    expect(names[k]).toContain(name);
  });
});
