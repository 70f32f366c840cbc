/** What a reading asks for: which way and how far, how far that may miss, and what will be left. */
import type { BenchCard } from '../../../sim/testing/bench-card';
import { benchWords, readouts, readoutText } from '../../../sim/wording/bench-card';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { TurnSketch } from './turn-sketch';
import type { TestedMethod } from './use-test-cuts';

interface BenchResultProps {
  /** null before there is a reading. */
  card: BenchCard | null;
  shownDeg: number;
  tested: TestedMethod;
  onDialled: (card: BenchCard) => void;
}

export function BenchResult({ card, shownDeg, tested, onDialled }: BenchResultProps) {
  return (
    <section className="bench-result" aria-label="What to dial" aria-live="polite">
      {card === null ? (
        <p className="note">Type the reading, and what to dial stands here.</p>
      ) : (
        <Dial card={card} shownDeg={shownDeg} tested={tested} onDialled={onDialled} />
      )}
    </section>
  );
}

function Dial({ card, shownDeg, tested, onDialled }: BenchResultProps & { card: BenchCard }) {
  const { project, method, kind } = tested;
  const words = benchWords(card, kind, project.piece, method, project.display);
  const isDialled = !card.stop && card.dialDeg !== 0;
  return (
    <>
      <p>{lengthsOnOneLine(words.says)}</p>
      <div>
        <p className="bench-dial">{words.act}</p>
        <p className="bench-give">{lengthsOnOneLine(words.giveOrTake)}</p>
      </div>
      {isDialled && (
        <div className="bench-turn">
          <Readouts card={card} shownDeg={shownDeg} />
          <TurnSketch fromDeg={shownDeg} isMore={card.dialDeg > 0} />
        </div>
      )}
      {words.onSquare !== '' && <p>{lengthsOnOneLine(words.onSquare)}</p>}
      {words.doubt !== '' && <p className="problem">{words.doubt}</p>}
      <p>{lengthsOnOneLine(words.left)}</p>
      {isDialled && (
        <button type="button" onClick={() => onDialled(card)}>
          Dialled; read the next test piece
        </button>
      )}
    </>
  );
}

function Readouts({ card, shownDeg }: { card: BenchCard; shownDeg: number }) {
  return (
    <table className="figures readouts">
      <thead>
        <tr>
          <th scope="col">Readout</th>
          <th scope="col">shows now</th>
          <th scope="col">bring it to</th>
        </tr>
      </thead>
      <tbody>
        {readouts(card, shownDeg).map(({ label, beforeDeg, afterDeg }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td>{readoutText(beforeDeg)}</td>
            <td className="decides">
              <strong>{readoutText(afterDeg)}</strong>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
