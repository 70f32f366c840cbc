/** For whom the sheet is, on what paper, the maker's own words, and what it shows. */
import type { Paper, SheetKind } from '../../../main/contract/report';
import { EXPLAIN_PARTS } from '../../../sim/project/document';
import { labelOnPage } from '../../../sim/project/fields';
import { SHOW } from '../../../sim/project/keys';
import { ChoiceField } from '../../inputs/choice-field';
import type { Choice } from '../../inputs/field-props';
import { TextAt } from '../../parts/field-at';
import { MethodLabel } from '../../parts/method-mark';
import { edit, useDocument } from '../../state/document-store';
import { withExplain, withShown } from '../../state/edits';
import { useProblemAt } from '../../state/problems';
import { useView } from '../../state/view-store';

const KINDS: readonly Choice<SheetKind>[] = [
  { value: 'client', label: 'A client', note: 'one page that explains' },
  { value: 'maker', label: 'The maker', note: 'all figures and the cuts in their order' },
];

const PAPERS: readonly Choice<Paper>[] = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'Letter' },
];

export function SheetInputs() {
  const kind = useView((view) => view.sheetKind);
  const paper = useView((view) => view.paper);
  return (
    <>
      <fieldset className="group">
        <legend>The sheet</legend>
        <ChoiceField
          label="It is for"
          layout="column"
          value={kind}
          choices={KINDS}
          onChange={(sheetKind) => useView.setState({ sheetKind })}
        />
        <ChoiceField
          label="Paper"
          value={paper}
          choices={PAPERS}
          onChange={(chosen) => useView.setState({ paper: chosen })}
        />
      </fieldset>
      <MethodChoice />
      {kind === 'client' && (
        <>
          <OwnWords />
          <PartSwitches />
        </>
      )}
    </>
  );
}

/** About which method the sheet is. */
function MethodChoice() {
  const methods = useDocument((state) => state.project.methods);
  const chosen = useDocument((state) => state.project.explain?.method);
  const isOff = useView((view) => chosen !== undefined && view.switchedOff.includes(chosen));
  const problem = useProblemAt('explain.method');
  const choose = (method: string | undefined): void => edit(withExplain({ method }));
  return (
    <fieldset className="group">
      <legend>The method it is about</legend>
      <ul className="switches">
        <li>
          <label className="switch">
            <input
              type="radio"
              name="explained-method"
              checked={chosen === undefined}
              onChange={() => choose(undefined)}
            />
            The one that does best
          </label>
        </li>
        {methods.map(({ name }, index) => (
          <li key={name}>
            <label className="switch">
              <input type="radio" name="explained-method" checked={name === chosen} onChange={() => choose(name)} />
              <MethodLabel index={index} name={name} />
            </label>
          </li>
        ))}
      </ul>
      {isOff && (
        <p className="note">It takes no part in the comparison now: the sheet is about the best of the others.</p>
      )}
      {problem !== undefined && <p className="problem">{problem}</p>}
    </fieldset>
  );
}

function OwnWords() {
  const explain = useDocument((state) => state.project.explain);
  const projectTitle = useDocument((state) => state.project.title);
  return (
    <fieldset className="group">
      <legend>Your words</legend>
      <TextAt
        path="explain.title"
        value={explain?.title}
        placeholder={projectTitle}
        onChange={(title) => edit(withExplain({ title }))}
      />
      <TextAt
        path="explain.client"
        value={explain?.client}
        placeholder="For …"
        onChange={(client) => edit(withExplain({ client }))}
      />
      <TextAt
        path="explain.closing"
        rows={5}
        value={explain?.closing}
        onChange={(closing) => edit(withExplain({ closing }))}
      />
    </fieldset>
  );
}

function PartSwitches() {
  const show = useDocument((state) => state.project.explain?.show);
  return (
    <fieldset className="group">
      <legend>What it shows</legend>
      <ul className="switches">
        {EXPLAIN_PARTS.map((part) => (
          <li key={part}>
            <label className="switch">
              <input
                type="checkbox"
                checked={show?.[part] ?? true}
                onChange={(event) => edit(withShown(part, event.target.checked))}
              />
              {labelOnPage(SHOW.keys[part])}
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
