/** Choosing another test piece: what nobody has touched follows, what somebody has typed stays. */
import { describe, expect, test } from 'vitest';
import { withTestKind } from '../../../renderer/pages/test-cuts/choose-kind';
import { methodShownIn } from '../../../renderer/state/method-shown';
import type { Method, TestCuts } from '../../../sim/project/document';
import { exampleProject } from '../../../sim/project/example';
import { applyPreset, presetOf } from '../../../sim/project/presets';
import { methodWith } from '../../support/projects';

const tested = (presetId: string, test: Partial<TestCuts> = {}): Method => {
  const method = applyPreset(methodWith({}), 'test', presetId);
  return { ...method, test: { ...method.test, ...test } };
};

describe('another kind of test piece', () => {
  test('is the whole preset where nothing was touched', () => {
    expect(presetOf(withTestKind('pair')(tested('dryRing')), 'test')?.id).toBe('pairAgainstAngle');
    expect(presetOf(withTestKind('fullRing')(tested('none')), 'test')?.id).toBe('dryRing');
    expect(presetOf(withTestKind('none')(tested('halfRing')), 'test')?.id).toBe('none');
  });

  test('keeps the figures that were typed, and the arm', () => {
    const own = tested('dryRing', { maxRounds: 5, readingMm: 0.07, armMm: 250 });
    expect(withTestKind('pair')(own).test).toEqual({
      ...tested('pairAgainstAngle').test,
      maxRounds: 5,
      readingMm: 0.07,
      armMm: 250,
    });
  });

  test('has rounds even if there were none', () => {
    expect(withTestKind('halfRing')(tested('none', { readingMm: 0.07 })).test).toMatchObject({
      maxRounds: 2,
      readingMm: 0.07,
    });
  });

  test('touches nothing but the test', () => {
    const { test: _, ...before } = tested('dryRing');
    const { test: __, ...after } = withTestKind('pair')(tested('dryRing'));
    expect(after).toEqual(before);
  });
});

describe('the method shown', () => {
  const project = exampleProject();
  const isTested = ({ test }: Method): boolean => test.kind !== 'none';

  test('is the one chosen, wherever it stands', () => {
    expect(methodShownIn(project, 'Glued one by one')).toBe(3);
  });

  test('is the first that suits without a choice, or when the one chosen is gone; else the first of all', () => {
    expect(methodShownIn(project, null, isTested)).toBe(2);
    expect(methodShownIn(project, 'Gone', isTested)).toBe(2);
    expect(methodShownIn(project, null)).toBe(0);
    expect(methodShownIn(project, null, () => false)).toBe(0);
  });
});
