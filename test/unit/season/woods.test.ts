import { describe, expect, test } from 'vitest';
import { EXAMPLES } from '../../../sim/project/example';
import { WOODS, woodNamed } from '../../../sim/season/woods';

describe('woods', () => {
  test('are found by what people write, whatever the case and the spaces', () => {
    expect(woodNamed('oak')?.label).toBe('White oak');
    expect(woodNamed('  Red  OAK ')?.label).toBe('Red oak');
    expect(woodNamed('yellow poplar')?.label).toBe('Yellow-poplar');
    expect(woodNamed('Birch-plywood')?.label).toBe('Plywood');
    expect(woodNamed('other')?.standing).toEqual({ kind: 'assumed' });
  });

  test('of all examples are among them', () => {
    for (const example of Object.values(EXAMPLES)) expect(woodNamed(example().stock.wood)).toBeDefined();
  });

  test('have no figure when nobody gave one', () => {
    // Pines differ too much among themselves for one figure to stand for all.
    for (const name of ['', 'pine', 'an unheard-of wood']) expect(woodNamed(name)).toBeUndefined();
  });

  test('each have names of their own', () => {
    const names = WOODS.flatMap(({ label, names: others }) => [label.toLowerCase().replace('-', ' '), ...others]);
    expect(new Set(names.filter((name, i) => names.indexOf(name) !== i))).toEqual(new Set(['yellow poplar']));
    expect(new Set(WOODS.map(({ id }) => id)).size).toBe(WOODS.length);
  });

  test('move more along the rings than across them', () => {
    for (const { movement } of WOODS) {
      if (movement.kind === 'solid') expect(movement.tangentialPerPoint).toBeGreaterThan(movement.radialPerPoint);
      else expect(movement.throughPerPoint).toBeGreaterThan(movement.inPlanePerPoint);
    }
  });

  test('say what they take for granted where nothing was published or remembered', () => {
    for (const { standing, remark } of WOODS) expect(standing.kind === 'assumed').toBe(remark !== undefined);
  });
});
