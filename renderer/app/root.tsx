/** The whole window: title block, the page that is shown, and what is said from anywhere. */
import { useEffect, useMemo } from 'react';
import type { Host } from '../../main/contract/host';
import { ExplainPage } from '../pages/explain/explain-page';
import { JointsPage } from '../pages/joints/joints-page';
import { MethodsPage } from '../pages/methods/methods-page';
import { PiecePage } from '../pages/piece/piece-page';
import { TestCutsPage } from '../pages/test-cuts/test-cuts-page';
import { VerdictPage } from '../pages/verdict/verdict-page';
import { FailureBoundary } from '../parts/failure-boundary';
import { HostContext } from '../parts/host-context';
import { useOrientationSaid } from '../parts/orientation';
import { SimulationContext } from '../parts/simulation-context';
import type { Simulation } from '../state/simulate-project';
import { useSettledSentence } from '../state/use-verdict';
import { type Page, useView } from '../state/view-store';
import { ChoiceDialog } from './choice-dialog';
import { commandsFor } from './commands';
import { takeFilesFromOutside } from './open-save';
import { Palette } from './palette';
import { RefusalDialog } from './refusal-dialog';
import { useThemeOnDocument } from './theme';
import { TitleBlock } from './title-block';
import {
  useComingBack,
  useCommandKeys,
  useDroppedFiles,
  useEditedMark,
  useProgressShown,
  useWindowMenu,
} from './use-window-events';

const PAGE_OF: Record<Page, () => React.JSX.Element> = {
  piece: PiecePage,
  methods: MethodsPage,
  verdict: VerdictPage,
  joints: JointsPage,
  'test-cuts': TestCutsPage,
  explain: ExplainPage,
};

export function Root({ host, simulation }: { host: Host; simulation: Simulation }) {
  const commandsNow = useMemo(() => () => commandsFor(host, simulation), [host, simulation]);
  const page = useView((view) => view.page);
  useOrientationSaid();
  useThemeOnDocument();
  useCommandKeys(commandsNow);
  useDroppedFiles(host);
  useComingBack(host);
  useWindowMenu(host, commandsNow);
  useProgressShown(host);
  useEffect(() => takeFilesFromOutside(host), [host]);
  const CurrentPage = PAGE_OF[page];
  return (
    <HostContext value={host}>
      <SimulationContext value={simulation}>
        <a className="skip-link" href="#page">
          Skip to the page
        </a>
        <TitleBlock commandsNow={commandsNow} />
        <main id="page" tabIndex={-1}>
          <FailureBoundary what="page" key={page}>
            <CurrentPage />
          </FailureBoundary>
        </main>
        <EditedMark host={host} />
        <Spoken />
        <Palette commandsNow={commandsNow} />
        <ChoiceDialog />
        <RefusalDialog />
      </SimulationContext>
    </HostContext>
  );
}

/** By itself, so that an edit draws anew only what shows something of it. */
function EditedMark({ host }: { host: Host }) {
  useEditedMark(host);
  return null;
}

/** Tells a screen reader what was done and what came out, once it has settled. */
function Spoken() {
  const announcement = useView((view) => view.announcement);
  const settled = useSettledSentence();
  return (
    <>
      <p role="status" className="spoken">
        {announcement}
      </p>
      <p role="status" className="spoken">
        {settled}
      </p>
    </>
  );
}
