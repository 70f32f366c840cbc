/** Everything the maker works from, on as many pages as it takes. */

import type { MakerAnswers, SheetInput } from '../../main/contract/report';
import { RingElevation } from '../drawing/ring-elevation';
import { RingPlan } from '../drawing/ring-plan';
import { StaveDrawing } from '../drawing/stave-drawing';
import { CautionGroups, ShortHold } from '../parts/caution-groups';
import { lengthsOnOneLine } from '../parts/lengths-on-one-line';
import { makerSections, type SheetSection } from './maker-sections';
import { methodIndexOf } from './method-index';
import { Sheet } from './sheet';
import { SheetCurve } from './sheet-curve';
import { dotsReachMm, SheetDots } from './sheet-dots';
import { SheetTableView } from './sheet-table';

const WIDTH_PX = 680;
const PLAN_PX = 262;
/** Wide enough for both halves. */
const ELEVATION_PX = 380;
/** The narrowest at which the face of a splayed stave still has room beside its joint. */
const STAVE_PX = 560;
const CURVE_HEIGHT_PX = 220;
const DOTS_HEIGHT_PX = 112;

export function MakerSheet({ answers, ...input }: SheetInput & { answers: MakerAnswers }) {
  const { project, result, paper } = input;
  const sections = makerSections(input, answers);
  return (
    <Sheet kind="maker" paper={paper} title={project.title} line={`Maker’s report on “${result.prediction.name}”`}>
      {sections.map((section) => (
        <Section key={section.title} section={section} input={input} />
      ))}
    </Sheet>
  );
}

function Section({ section, input }: { section: SheetSection; input: SheetInput }) {
  const { title, picture, paragraphs, tables, list = [], note, cautionsFor, isSideBySide } = section;
  return (
    <section>
      <h2>{title}</h2>
      {cautionsFor !== undefined && (
        <>
          <ShortHold project={input.project} />
          <CautionGroups project={input.project} methods={[cautionsFor]} />
        </>
      )}
      {paragraphs.map((paragraph) => (
        <p key={paragraph}>{lengthsOnOneLine(paragraph)}</p>
      ))}
      {picture !== undefined && <Picture what={picture} input={input} />}
      <div className={isSideBySide ? 'sheet-tables side-by-side' : 'sheet-tables'}>
        {tables.map((table) => (
          <SheetTableView key={`${table.caption ?? ''} ${table.head[0]}`} table={table} />
        ))}
      </div>
      {list.length > 0 && (
        <ul className="sheet-list">
          {list.map((sentence) => (
            <li key={sentence}>{lengthsOnOneLine(sentence)}</li>
          ))}
        </ul>
      )}
      {note !== undefined && <p className="sheet-note">{note}</p>}
    </section>
  );
}

function Picture({ what, input }: { what: NonNullable<SheetSection['picture']>; input: SheetInput }) {
  const { project, results, result } = input;
  const { piece, display, limits } = project;
  if (what === 'piece') {
    return (
      <>
        <div className="sheet-drawings">
          <RingPlan piece={piece} display={display} widthPx={PLAN_PX} />
          <RingElevation piece={piece} display={display} widthPx={ELEVATION_PX} />
        </div>
        <StaveDrawing piece={piece} display={display} widthPx={STAVE_PX} />
      </>
    );
  }
  const common = { limitMm: limits.showGapMm, display, widthPx: WIDTH_PX };
  if (what === 'methods') {
    const curves = results.map((each) => ({ result: each, index: methodIndexOf(project, each) }));
    const reachMm = dotsReachMm(results, limits.showGapMm);
    return <SheetCurve curves={curves} reachMm={reachMm} heightPx={CURVE_HEIGHT_PX} {...common} />;
  }
  return (
    <SheetDots
      result={result}
      index={methodIndexOf(project, result)}
      reachMm={dotsReachMm([result], limits.showGapMm)}
      heightPx={DOTS_HEIGHT_PX}
      {...common}
    />
  );
}
