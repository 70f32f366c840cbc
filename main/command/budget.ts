/** `ringtrue budget`: where the gap of each method comes from. */
import { budgetSources, type SourceBudget } from '../../sim/budget/budget';
import type { SourceIndices } from '../../sim/budget/source-sensitivity';
import { blockCount } from '../../sim/run/block-loop';
import { leftOutSentence, SOURCE_TABLE_NOTE, sourceTable } from '../../sim/wording/budget';
import { gapOriginSentence } from '../../sim/wording/gap-origin';
import { plainText } from '../../sim/wording/tables';
import { askBudget, askIndices, indexTrials } from './budget-tasks';
import { methodCommand } from './method-command';

interface Answer {
  budget: SourceBudget;
  indices: SourceIndices[];
  indexTrials: number;
}

export const budget = methodCommand<Answer, undefined>({
  command: 'budget',
  kinds: {},
  wish: () => undefined,
  tasks: (project, method, options) => 1 + budgetSources(project, method).length + blockCount(indexTrials(options)),
  ask: async (runner, project, method, options) => {
    const [found, indices] = await Promise.all([
      askBudget(runner, project, method, options),
      askIndices(runner, project, method, options),
    ]);
    return { budget: found, indices, indexTrials: indexTrials(options) };
  },
  json: ({ budget: found, indices, indexTrials: rings }) => {
    return {
      trials: found.trials,
      indexTrials: rings,
      showGapP95Mm: found.showGapP95Mm,
      sources: found.sources.map((effect) => {
        const { first, total } = indices.find(({ source }) => source === effect.source)!;
        return { ...effect, firstOrderIndex: first, totalIndex: total };
      }),
    };
  },
  texts: ({ budget: found, indices }, { display }, { name }) => {
    const sentence = `“${name}”: where does the gap come from?\n${gapOriginSentence(found, display)}`;
    if (found.sources.length === 0) return [sentence];
    const leftOut = leftOutSentence(found, indices);
    const table = plainText(sourceTable(name, found, indices, display));
    return [sentence, leftOut === null ? table : `${table}\n${leftOut}`];
  },
  note: SOURCE_TABLE_NOTE,
});
