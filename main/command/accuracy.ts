/** `ringtrue accuracy`: how good each source of error would have to be for a wanted share of good pieces. */
import { type AccuracyNeeded, accuracyAnswer, accuracySources } from '../../sim/decide/accuracy-needed';
import { accuracyTexts } from '../../sim/wording/accuracy';
import { decimalNumber } from './arguments';
import { methodCommand } from './method-command';
import { Refusal } from './refusal';

export const accuracy = methodCommand<AccuracyNeeded, number>({
  command: 'accuracy',
  kinds: { yield: 'value' },
  wish: (given) => {
    const wanted = decimalNumber(given, 'yield', { from: 0, to: 1, open: true, whole: false });
    if (wanted !== undefined) return wanted;
    throw new Refusal(['Option --yield is missing. Give the share of pieces wanted good, such as 0.95.']);
  },
  tasks: (project, method) => 2 + accuracySources(project, method).length,
  ask: async (runner, project, method, options, wanted) => {
    const question = { wanted, yieldNow: await runner.do({ kind: 'yieldAsItIs', method, options }) };
    const sources = accuracySources(project, method);
    const [balanced, ...answers] = await Promise.all([
      runner.do({ kind: 'balanced', method, options, question }),
      ...sources.map((source) => runner.do({ kind: 'sourceNeeded', method, options, source, question })),
    ]);
    return accuracyAnswer(question, answers, balanced, options);
  },
  json: ({ wanted, ...needed }) => ({ yieldWanted: wanted, ...needed }),
  texts: accuracyTexts,
});
