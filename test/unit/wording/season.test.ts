import { describe, expect, it } from 'vitest';
import { exampleProject } from '../../../sim/project/example';
import { seasonForecast } from '../../../sim/season/forecast';
import { woodSentences } from '../../../sim/wording/season';

function said(wood: string): string {
  const project = exampleProject();
  return woodSentences(seasonForecast({ ...project, stock: { ...project.stock, wood } }, 5), wood);
}

describe('the wood that is computed with', () => {
  it('is not called unnamed where its name is only not known', () => {
    expect(said('purpleheart')).toMatch(/^How much “purpleheart” moves is not known here\. It is taken to move as/);
    expect(said('purpleheart')).not.toContain('not named');
  });

  it('is called unnamed where it is', () => {
    expect(said('other')).toMatch(/^The wood is not named\. It is taken to move as/);
    expect(said('oak')).toMatch(/^Computed for white oak\./);
  });
});
