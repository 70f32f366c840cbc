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
import { methodIndexOf } from './method-index';
import { Sheet } from './sheet';
import { dotsReachMm, SheetDots } from './sheet-dots';

const DRAWING_PX = 224;
const DOTS_WIDTH_PX = 680;
const DOTS_HEIGHT_PX = 106;

interface ClientSheetProps extends SheetInput {
  /** null while it is not worked out: no cause of the gap is named then. */
  budget: MakerAnswers['budget'];
}

export function ClientSheet({ project, results, result, paper, budget }: ClientSheetProps) {
  const { explain, piece, display, limits } = project;
  const index = methodIndexOf(project, result);
  const method = project.methods[index];
  const shows = (part: ExplainPart): boolean => explain?.show?.[part] ?? true;
  const title = explain?.title || project.title;
  return (
    <Sheet kind="client" paper={paper} title={title} line={explain?.client ?? ''} foot={basisSentence(project, result)}>
      <div className={shows('drawing') ? 'sheet-lead with-drawing' : 'sheet-lead'}>
        {shows('drawing') && (
          <div className="sheet-drawing">
            <RingPlan piece={piece} display={display} isRounded widthPx={DRAWING_PX} />
          </div>
        )}
        <div className="sheet-lead-words">
          <p className="sheet-piece">{lengthsOnOneLine(pieceSentence(project))}</p>
          {shows('why') && method !== undefined && (
            <Words
              title="Why a ring shows small errors"
              sentences={whySentences(project, method, budget?.budget ?? null)}
            />
          )}
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
              heightPx={DOTS_HEIGHT_PX}
            />
            <p className="sheet-caption">
              Fifty {ringsOf(piece)} made this way: each dot is one of them, placed by its widest gap in{' '}
              {display === 'metric' ? 'millimetres' : 'inches'}. Hollow dots are over the limit.
            </p>
          </>
        )}
        <p className="sheet-say">{expectSentences(project, result, results).map(lengthsOnOneLine).join(' ')}</p>
      </section>
      <div className="sheet-columns">
        {shows('making') && method !== undefined && (
          <Words title="What is done about it" sentences={makingSentences(project, method, result)} isList />
        )}
        {shows('eye') && <Words title="What an eye sees" sentences={eyeSentences(project, result)} />}
        {shows('season') && <Words title="What the seasons do" sentences={seasonGapSentences(project)} />}
      </div>
      {shows('remains') && <Words title="What remains" sentences={remainsSentences(project, result)} />}
      {closingParagraphs(project).length > 0 && (
        <section className="sheet-closing">
          {closingParagraphs(project).map((paragraph, place) => (
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
  sentences: readonly string[];
  isList?: boolean;
}

function Words({ title, sentences, isList = false }: WordsProps) {
  return (
    <section>
      <h2>{title}</h2>
      {isList ? (
        <ul className="sheet-list">
          {sentences.map((sentence) => (
            <li key={sentence}>{lengthsOnOneLine(sentence)}</li>
          ))}
        </ul>
      ) : (
        <p>{sentences.map(lengthsOnOneLine).join(' ')}</p>
      )}
    </section>
  );
}
