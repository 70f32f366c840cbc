/** The four test pieces against each other: how each is read, how much it shows, and why one cannot be used. */
import { testPieceTable } from '../../../sim/export/test-figures';
import {
  chanceSentence,
  perDegreeText,
  readingWords,
  smallAngleText,
  TEST_KIND_WORDS,
  tellsMostSentence,
} from '../../../sim/wording/test-pieces';
import { SaveTable } from '../../exports/save-table';
import { ColumnHead } from '../../inputs/explained';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { Scrolls } from '../../parts/scrolls';
import type { TestedMethod, TestPiece } from './use-test-cuts';

const TITLE = 'Which test piece tells most';

export function PieceTable({ tested }: { tested: TestedMethod }) {
  const { project, pieces, method } = tested;
  const inUse = pieces.find(({ kind, refusal }) => kind === method.test.kind && refusal === null);
  return (
    <section className="group saved" aria-labelledby="pieces-title">
      <h2 id="pieces-title">{TITLE}</h2>
      <SaveTable what={TITLE} table={() => testPieceTable(pieces, project.display)} />
      <p>{tellsMostSentence(pieces, method.test.kind)}</p>
      <Scrolls label="Which test piece tells most, table">
        <table className="figures test-pieces">
          <thead>
            <tr>
              <th scope="col">Test piece, and how it is read</th>
              <ColumnHead head="1° shows as" />
              <ColumnHead head="Smallest error told" />
            </tr>
          </thead>
          <tbody>
            {pieces.map((piece) => (
              <PieceRow key={piece.kind} piece={piece} tested={tested} />
            ))}
          </tbody>
        </table>
      </Scrolls>
      <p className="note">
        The smallest error that stands out from a right setting, 19 times in 20: with your reading error, and with what
        the test piece’s own cuts add by chance.
      </p>
      {inUse && <p>{lengthsOnOneLine(chanceSentence(inUse.figures, method.test, project.display))}</p>}
    </section>
  );
}

function PieceRow({ piece: { kind, figures, refusal }, tested }: { piece: TestPiece; tested: TestedMethod }) {
  const { project, method } = tested;
  const { where, tool } = readingWords(kind, project.piece, method, project.display);
  const isChosen = method.test.kind === kind;
  return (
    <tr data-chosen={isChosen || undefined}>
      <th scope="row">
        <strong>{TEST_KIND_WORDS[kind].label}</strong>
        {isChosen && <span className="in-use">in use</span>}
        <span className="note">{refusal ?? `${where} ${tool}`}</span>
      </th>
      {refusal === null ? (
        <>
          <td className="decides whole">
            <strong>{perDegreeText(figures.mmPerDeg, project.display)}</strong>
          </td>
          <td className="decides whole">
            <strong>{smallAngleText(figures.leastToldDeg)}</strong>
          </td>
        </>
      ) : (
        <td colSpan={2}>cannot be used</td>
      )}
    </tr>
  );
}
