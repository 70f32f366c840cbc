/** Changing the kind of test piece: the figures that nobody has touched follow it, the others stay as they are. */
import type { Method, TestCuts, TestKind } from '../../../sim/project/document';
import { PRESETS } from '../../../sim/project/presets';

const FIGURES = [
  'maxRounds',
  'readingMm',
  'stopWhenMm',
  'dialDeg',
  'dialShare',
] as const satisfies readonly (keyof TestCuts)[];

function presetFigures(kind: TestKind) {
  return PRESETS.test.find(({ figures }) => figures.kind?.value === kind)?.figures;
}

export function withTestKind(kind: TestKind): (method: Method) => Method {
  return (method) => {
    const before = presetFigures(method.test.kind);
    const after = presetFigures(kind);
    const test: TestCuts = { ...method.test, kind };
    for (const key of FIGURES) {
      const wanted = after?.[key]?.value;
      if (wanted === undefined) continue;
      // No rounds at all belong to no test; a test piece that is chosen is meant to be cut.
      const isUntouched = test[key] === before?.[key]?.value || (key === 'maxRounds' && test.maxRounds === 0);
      if (isUntouched) test[key] = wanted;
    }
    return { ...method, test };
  };
}
