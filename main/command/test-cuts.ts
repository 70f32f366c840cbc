/** `ringtrue test-cuts`: whether test cuts are worth it, and how many rounds of them. */
import { CAUTIONS_COMMAND_LINE } from '../../sim/wording/cautions';
import { countedSentence } from '../../sim/wording/job-costs';
import { plainText } from '../../sim/wording/tables';
import { testAnswer, testValueTable } from '../../sim/wording/test-value';
import { methodCommand, ringsAsked } from './method-command';

export const testCuts = methodCommand({
  kind: 'testValue',
  command: 'test-cuts',
  options: {},
  asked: ringsAsked,
  note: CAUTIONS_COMMAND_LINE,
  json: ({ rounds, ...value }) => {
    return {
      ...value,
      rounds: rounds.map(({ maxRounds, yield: good, cost, extraCost, pays }) => {
        return { maxRounds, yield: good, cost, extraCostPerJob: extraCost, paysChance: pays };
      }),
    };
  },
  texts: (value, project, method) => {
    const { headline, because } = testAnswer(value, project, project.methods.indexOf(method));
    const counted = countedSentence(method.minutes, project.costs);
    return [[`“${method.name}”`, headline, ...because, counted].join('\n'), plainText(testValueTable(value))];
  },
});
