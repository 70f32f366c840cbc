/** One page for somebody who has never cut a mitre. */

import type { MakerAnswers, SheetInput } from '../../main/contract/report';
import type { ExplainPart } from '../../sim/project/document';
import {
  basisSentence,
  closingParagraphs,
  expectSentences,
  eyeSentences,
  pieceSentence,
  remainsSentences,
  ringsOf,
  seasonGapSentences,
} from '../../sim/wording/explain';
import { makingSentences } from '../../sim/wording/making';
import { whySentences } from '../../sim/wording/why';
import { RingPlan } from '../drawing/ring-plan';
import { lengthsOnOneLine } from '../parts/lengths-on-one-line';
import { clientFit } from './client-fit';
import { methodIndexOf } from './method-index';
import { Sheet } from './sheet';
import { dotsReachMm, SheetDots } from './sheet-dots';

const DOTS_WIDTH_PX = 680;

interface ClientSheetProps extends SheetInput {
  /** null while it is not worked out: no cause of the gap is named then. */
  budget: MakerAnswers['budget'];
}

export function ClientSheet({ project, results, result, paper, budget }: ClientSheetProps) {
  const { explain, piece, display, limits } = project;
  const index = methodIndexOf(project, result);
  const method = project.methods[index];
  if (method === undefined) throw new Error('The sheet is about a method that the project does not have.');
  const shows = (part: ExplainPart): boolean => explain?.show?.[part] ?? true;
  const said = (part: ExplainPart, sentences: readonly string[]) =>
    shows(part) ? sentences.map(lengthsOnOneLine) : [];
  const title = explain?.title || project.title;
  const line = explain?.client ?? '';
  const words = {
    piece: lengthsOnOneLine(pieceSentence(project)),
    why: said('why', whySentences(project, method, budget?.budget ?? null)),
    expect: expectSentences(project, result, results).map(lengthsOnOneLine),
    making: said('making', makingSentences(project, method, result)),
    eye: said('eye', eyeSentences(project, result)),
    season: said('season', seasonGapSentences(project)),
    remains: said('remains', remainsSentences(project, result)),
  };
  const unit = display === 'metric' ? 'millimetres' : 'inches';
  const caption = `Fifty ${ringsOf(piece)} made this way: each dot is one of them, placed by its widest gap in ${unit}. Hollow dots are over the limit.`;
  const closing = closingParagraphs(project);
  const foot = basisSentence(project, result);
  const flat = (sentences: readonly string[]): string => sentences.join(' ');
  const fit = clientFit(
    {
      title,
      line,
      piece: words.piece,
      why: flat(words.why),
      caption: shows('dots') ? caption : '',
      expect: flat(words.expect),
      making: words.making,
      beside: [words.eye, words.season].map(flat).filter((text) => text !== ''),
      remains: flat(words.remains),
      closing,
      foot,
    },
    paper,
    { drawing: shows('drawing'), dots: shows('dots') },
  );
  return (
    <Sheet kind="client" paper={paper} title={title} line={line} foot={foot} scale={fit.scale}>
      <div
        className={shows('drawing') ? 'sheet-lead with-drawing' : 'sheet-lead'}
        style={shows('drawing') ? { gridTemplateColumns: `${fit.drawingPx}px minmax(0, 1fr)` } : undefined}
      >
        {shows('drawing') && (
          <div className="sheet-drawing">
            <RingPlan piece={piece} display={display} isRounded widthPx={fit.drawingPx} />
          </div>
        )}
        <div className="sheet-lead-words">
          <p className="sheet-piece">{words.piece}</p>
          <Words title="Why a ring shows small errors" sentences={words.why} />
        </div>
      </div>
      <section>
        <h2>What to expect</h2>
        {shows('dots') && (
          <>
            <SheetDots
              result={result}
              index={index}
              limitMm={limits.showGapMm}
              display={display}
              reachMm={dotsReachMm([result], limits.showGapMm)}
              widthPx={DOTS_WIDTH_PX}
              heightPx={fit.dotsPx}
            />
            <p className="sheet-caption">{caption}</p>
          </>
        )}
        <p className="sheet-say">{flat(words.expect)}</p>
      </section>
      <div className="sheet-columns">
        <Words title="What is done about it" sentences={words.making} isList />
        <div className="sheet-beside">
          <Words title="What an eye sees" sentences={words.eye} />
          <Words title="What the seasons do" sentences={words.season} />
        </div>
      </div>
      <Words title="What remains" sentences={words.remains} />
      {closing.length > 0 && (
        <section className="sheet-closing">
          {closing.map((paragraph, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two paragraphs may say the same.
            <p key={place}>{paragraph}</p>
          ))}
        </section>
      )}
    </Sheet>
  );
}

interface WordsProps {
  title: string;
  /** Without any, nothing is shown. */
  sentences: readonly string[];
  isList?: boolean;
}

function Words({ title, sentences, isList = false }: WordsProps) {
  if (sentences.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      {isList ? (
        <ul className="sheet-list">
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : (
        <p>{sentences.join(' ')}</p>
      )}
    </section>
  );
}
