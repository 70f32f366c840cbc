/** What the sheet on the screen is made from: the results of the verdict, at the limit that is set. */
import { useMemo } from 'react';
import type { SheetInput } from '../../../main/contract/report';
import { explainedResult } from '../../../sim/wording/explain';
import { useShownProject } from '../../state/shown-project';
import { useVerdict } from '../../state/use-verdict';
import { useView } from '../../state/view-store';

export interface SheetOnScreen {
  /** null before any ring is simulated. */
  input: SheetInput | null;
  /** Whether every figure on it is for the project as it stands. */
  isFresh: boolean;
}

export function useSheet(): SheetOnScreen {
  const project = useShownProject();
  const paper = useView((view) => view.paper);
  const { methods } = useVerdict();
  return useMemo(() => {
    const results = methods.map(({ result }) => result);
    const result = explainedResult(project, results);
    const isFresh = methods.every((method) => method.isFresh && method.isGraded);
    return { input: result === undefined ? null : { project, results, result, paper }, isFresh };
  }, [project, paper, methods]);
}
