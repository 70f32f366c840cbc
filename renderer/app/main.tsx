import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { chooseHost } from '../host/choose-host';
import { drawn } from '../state/after-drawing';
import { answerQuestions } from '../state/answer-questions';
import { keepViewOnMachine } from '../state/keep-on-machine';
import { simulateProject } from '../state/simulate-project';
import { startPool, startWorkerAlone } from '../worker/start-pool';
import { keepEdits, offerRecovery } from './keep-edits';
import { openAtStart } from './open-save';
import { Root } from './root';
import '../parts/tokens.css';
import '../parts/base.css';
import './layout.css';
import '../parts/page-frame.css';
import '../parts/controls.css';
import '../charts/charts.css';
import '../pages/pages.css';

const host = chooseHost();
keepViewOnMachine(await host.keptView(), (text) => void host.keepView(text));
const simulation = simulateProject(startPool(), drawn);
answerQuestions({ long: startPool(), quick: startWorkerAlone() });
keepEdits(host);
void openAtStart(host).then(() => offerRecovery(host));

const container = document.getElementById('root');
if (!container) throw new Error('The page has no place for the program.');
createRoot(container).render(
  <StrictMode>
    <Root host={host} simulation={simulation} />
  </StrictMode>,
);
