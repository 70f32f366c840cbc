/** The bench card: where to read, the reading typed in, and large beside it what to dial and which way. */
import { benchCard, type BenchCard as Card } from '../../../sim/testing/bench-card';
import { nominalReadoutDeg, readouts } from '../../../sim/wording/bench-card';
import { readingWords, showsText, TEST_KIND_WORDS } from '../../../sim/wording/test-pieces';
import { AngleField } from '../../inputs/angle-field';
import { ChoiceField } from '../../inputs/choice-field';
import { OptionalLengthField } from '../../inputs/length-field';
import { announce, type BenchReading, useView } from '../../state/view-store';
import { BenchResult } from './bench-result';
import type { TestedMethod } from './use-test-cuts';

/** What the readout shows is dropped with the test piece it belongs to. */
function readingAtHand({ method, kind }: TestedMethod, bench: BenchReading | null): BenchReading {
  const of = `${method.name} ${kind}`;
  return bench?.of === of ? bench : { of, round: 1, sizeMm: null, isOver: false, shownDeg: null };
}

export function BenchCard({ tested }: { tested: TestedMethod }) {
  const { kind, pieces } = tested;
  const refusal = pieces.find((piece) => piece.kind === kind)?.refusal ?? null;
  return (
    <section id="bench" className="group" aria-labelledby="bench-title">
      <h2 id="bench-title">At the bench: type what you read, get what to dial</h2>
      {refusal === null ? <Reading tested={tested} /> : <p>{refusal}</p>}
    </section>
  );
}

function Reading({ tested }: { tested: TestedMethod }) {
  const { project, index, method, kind, pieces, isFresh } = tested;
  const { piece, display } = project;
  const fractions = useView((view) => view.inchFractions);
  const angleStyle = useView((view) => view.angleStyle);
  const bench = useView((view) => view.bench);
  const reading = readingAtHand(tested, bench);
  const set = (patch: Partial<BenchReading>): void => useView.setState({ bench: { ...reading, ...patch } });
  const words = readingWords(kind, piece, method, display);
  const figures = pieces.find((candidate) => candidate.kind === kind)?.figures;
  const { sizeMm, isOver, round } = reading;
  const card = sizeMm === null ? null : benchCard(project, index, kind, isOver ? -sizeMm : sizeMm);
  const setting = figures?.setting ?? 'tilt';
  const shownDeg = reading.shownDeg ?? nominalReadoutDeg(setting, piece, method);
  const goOn = (dialled: Card): void => {
    const [{ afterDeg }] = readouts(dialled, shownDeg);
    set({ round: round + 1, sizeMm: null, isOver: false, shownDeg: afterDeg });
    announce(`Dialled. Read test piece ${round + 1}.`);
  };
  return (
    <div className={isFresh ? 'bench' : 'bench softened'}>
      <div className="bench-reading">
        <p className="bench-round">
          {TEST_KIND_WORDS[kind].label}, test piece {round}
          {method.test.kind !== 'none' && ` of ${method.test.maxRounds} at most`}
        </p>
        {method.test.kind === 'none' && (
          <p className="note">This method has no test piece of its own; the card reckons with a whole ring.</p>
        )}
        <p>{words.where}</p>
        <p className="note">
          {words.tool} {figures && showsText(figures, display)}
        </p>
        <ChoiceField
          label="What you see"
          layout="column"
          value={isOver ? 'over' : 'open'}
          choices={[
            { value: 'open', label: words.open },
            { value: 'over', label: words.over },
          ]}
          onChange={(seen) => set({ isOver: seen === 'over' })}
        />
        <OptionalLengthField
          label="By how much"
          display={display}
          fractions={fractions}
          whenEmpty="what you read"
          value={sizeMm}
          onChange={(mm) => set(mm !== null && mm < 0 ? { sizeMm: -mm, isOver: true } : { sizeMm: mm })}
        />
        <AngleField
          angleStyle={angleStyle}
          label={`What the ${setting} shows now, from square`}
          help="As the saw’s scale or your angle gauge shows it; only the difference matters."
          value={shownDeg}
          onChange={(deg) => set({ shownDeg: deg })}
        />
        {round > 1 && (
          <button type="button" className="quiet" onClick={() => useView.setState({ bench: null })}>
            Start again with test piece 1
          </button>
        )}
      </div>
      <BenchResult card={card} shownDeg={shownDeg} tested={tested} onDialled={goOn} />
    </div>
  );
}
