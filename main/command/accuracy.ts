/** `ringtrue accuracy`: how good each source of error would have to be for a wanted share of good pieces. */
import { accuracyTexts } from '../../sim/wording/accuracy';
import { decimalNumber } from './arguments';
import { methodCommand, ringsAsked } from './method-command';
import { Refusal } from './refusal';

export const accuracy = methodCommand({
  kind: 'accuracy',
  command: 'accuracy',
  options: { yield: 'value' },
  asked: (given, trials) => {
    const wanted = decimalNumber(given, 'yield', { from: 0, to: 1, open: true, whole: false });
    if (wanted !== undefined) return { wanted, ...ringsAsked(given, trials) };
    throw new Refusal(['Option --yield is missing. Give the share of pieces wanted good, such as 0.95.']);
  },
  json: ({ wanted, ...needed }) => ({ yieldWanted: wanted, ...needed }),
  texts: accuracyTexts,
});
