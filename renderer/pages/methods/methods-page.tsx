/** Which ways of working are weighed against each other, side by side, and what each comes to. */
import { useState } from 'react';
import { listText, shareWithInterval } from '../../../sim/wording/figures';
import { showGapP95Text } from '../../../sim/wording/tables';
import { CautionsLine } from '../../parts/cautions-line';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { MethodLabel } from '../../parts/method-mark';
import { PageFrame } from '../../parts/page-frame';
import { Scrolls } from '../../parts/scrolls';
import { WorkMark } from '../../parts/work-mark';
import { edit, useDocument } from '../../state/document-store';
import { withMethodAdded } from '../../state/edits';
import { MOST_METHODS, startingMethods } from '../../state/starting-methods';
import { useVerdict } from '../../state/use-verdict';
import { useView } from '../../state/view-store';
import { DifferencesControl } from './differences-control';
import { MethodColumn } from './method-column';
import './methods.css';

export function MethodsPage() {
  const methods = useDocument((state) => state.project.methods);
  const switchedOff = useView((view) => view.switchedOff);
  const isOn = (name: string): boolean => !switchedOff.includes(name);
  const inUse = methods.filter(({ name }) => isOn(name));
  return (
    <PageFrame
      question="Which ways of working do you weigh against each other?"
      answer={answerFor(inUse.map(({ name }) => name))}
      beside={<CautionsLine />}
      wideInputs
      inputs={
        <>
          <DifferencesControl />
          <Scrolls label="Methods side by side">
            <ul className="method-columns">
              {methods.map((method, index) => (
                <MethodColumn
                  // biome-ignore lint/suspicious/noArrayIndexKey: a method is its place; its name changes while it is typed.
                  key={index}
                  method={method}
                  index={index}
                  count={methods.length}
                  isOff={!isOn(method.name)}
                  isLastOn={inUse.length === 1 && isOn(method.name)}
                />
              ))}
            </ul>
          </Scrolls>
          <AddMethod />
        </>
      }
      consequences={<WhatFollows />}
    />
  );
}

function answerFor(names: readonly string[]): string {
  if (names.length === 1) return `Only “${names[0]}”; add another to compare it with.`;
  return `${listText(names.map((name) => `“${name}”`))}.`;
}

function AddMethod() {
  const piece = useDocument((state) => state.project.piece);
  const count = useDocument((state) => state.project.methods.length);
  const starts = startingMethods(piece);
  const [chosen, setChosen] = useState(0);
  const isFull = count >= MOST_METHODS;
  const add = (): void => {
    const method = starts[chosen];
    if (method) edit(withMethodAdded(method));
  };
  return (
    <div className="add-method">
      <label>
        Start a new method from{' '}
        <select value={chosen} disabled={isFull} onChange={(event) => setChosen(Number(event.target.value))}>
          {starts.map(({ name }, i) => (
            <option key={name} value={i}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <button type="button" disabled={isFull} onClick={add}>
        Add a method
      </button>
      {isFull && <p className="note">{MOST_METHODS} methods are as many as can be compared at once.</p>}
    </div>
  );
}

function gapSentence(p95: string): string {
  return p95.startsWith('over') ? `more than 5 of 100 show a gap ${p95}` : `95 of 100 show no gap over ${p95}`;
}

function WhatFollows() {
  const { methods, recommendation } = useVerdict();
  const display = useDocument((state) => state.project.display);
  return (
    <>
      <WorkMark />
      <ul className="chances">
        {methods.map(({ index, name, isFresh, result }) => {
          const [figure, interval] = shareWithInterval(result.prediction.yield).split(/ (?=\()/);
          return (
            <li key={name} className={isFresh ? undefined : 'softened'}>
              <MethodLabel index={index} name={name} />
              <p>
                <strong>{figure}</strong> good <span className="note">{interval}</span>
              </p>
              <p className="note">{lengthsOnOneLine(gapSentence(showGapP95Text(result, display)))}</p>
            </li>
          );
        })}
      </ul>
      {methods.length > 0 && <p>{recommendation.headline}</p>}
    </>
  );
}
