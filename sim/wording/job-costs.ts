/** What a job's cost is made of, in words. */
import type { Costs, Minutes } from '../project/document';
import { countText, minutesText, moneyText } from './figures';

/** The stock and the minutes behind every cost of a method. */
export function countedSentence({ setUp, perCut, perTestRound }: Minutes, costs: Costs): string {
  const { batch, stockPerRing, testStockPerRound, ratePerHour, assemblyMinutes } = costs;
  const job = batch === 1 ? 'a job of one good piece' : `a job of ${countText(batch)} good pieces`;
  return (
    `Counted for ${job}: stock of ${moneyText(stockPerRing)} a ring and ${moneyText(testStockPerRound)} a test round; ` +
    `${minutesText(setUp)} for a set-up, ${minutesText(perTestRound)} for a test round, ${Number(perCut.toFixed(2))} min ` +
    `for a cut and ${minutesText(assemblyMinutes)} for a glue-up, at ${moneyText(ratePerHour)} an hour.`
  );
}
