/** `ringtrue budget`: where the gap of each method comes from. */
import { indexRingsOf } from '../../sim/questions/questions';
import { leftOutSentence, SOURCE_TABLE_NOTE, sourceTable } from '../../sim/wording/budget';
import { gapOriginSentence } from '../../sim/wording/gap-origin';
import { plainText } from '../../sim/wording/tables';
import { methodCommand } from './method-command';

export const budget = methodCommand({
  kind: 'budget',
  command: 'budget',
  options: {},
  asked: (_given, trials) => (trials === undefined ? {} : { rings: trials, indexRings: trials }),
  json: ({ budget: found, indices }, asked) => {
    return {
      trials: found.trials,
      indexTrials: indexRingsOf(asked),
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
