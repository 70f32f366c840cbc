/**
 * Where each piece of state lives: in the project file, on this machine, or nowhere once the window is closed;
 * and whether undo brings it back. The compiler keeps the table complete.
 */
import type { ChoiceState } from './choice-store';
import type { DocumentState, SettledState } from './document-store';
import type { FileState } from './file-store';
import type { JointsViewState } from './joints-view';
import type { QuestionState } from './question-store';
import type { RunState } from './run-store';
import type { VerdictViewState } from './verdict-view';
import type { ViewState } from './view-store';

export interface Keeping {
  kept: 'file' | 'machine' | 'nowhere';
  undoable: boolean;
}

type AnyState = ChoiceState &
  DocumentState &
  SettledState &
  FileState &
  ViewState &
  RunState &
  QuestionState &
  JointsViewState &
  VerdictViewState;

export const STATE_TABLE = {
  project: { kept: 'file', undoable: true },
  isSettled: { kept: 'nowhere', undoable: false },

  fileName: { kept: 'nowhere', undoable: false },
  place: { kept: 'nowhere', undoable: false },
  savedProject: { kept: 'nowhere', undoable: false },

  page: { kept: 'nowhere', undoable: false },
  theme: { kept: 'machine', undoable: false },
  orientation: { kept: 'machine', undoable: false },
  inchFractions: { kept: 'machine', undoable: false },
  angleStyle: { kept: 'machine', undoable: false },
  differsFrom: { kept: 'nowhere', undoable: false },
  switchedOff: { kept: 'nowhere', undoable: false },
  bench: { kept: 'nowhere', undoable: false },
  sheetKind: { kept: 'nowhere', undoable: false },
  paper: { kept: 'machine', undoable: false },
  choice: { kept: 'nowhere', undoable: false },
  refusal: { kept: 'nowhere', undoable: false },
  announcement: { kept: 'nowhere', undoable: false },

  outcomes: { kept: 'nowhere', undoable: false },
  lastByName: { kept: 'nowhere', undoable: false },
  work: { kept: 'nowhere', undoable: false },
  failures: { kept: 'nowhere', undoable: false },

  questionsWanted: { kept: 'nowhere', undoable: false },
  questionsRunning: { kept: 'nowhere', undoable: false },
  questionsStopped: { kept: 'nowhere', undoable: false },
  questionFailures: { kept: 'nowhere', undoable: false },
  answers: { kept: 'nowhere', undoable: false },
  lastAnswers: { kept: 'nowhere', undoable: false },

  lookedAtMethod: { kept: 'nowhere', undoable: false },
  ringChoice: { kept: 'nowhere', undoable: false },
  ringNumber: { kept: 'nowhere', undoable: false },
  exaggeration: { kept: 'nowhere', undoable: false },
  wantedYield: { kept: 'nowhere', undoable: false },

  gapView: { kept: 'nowhere', undoable: false },
  heldAgainst: { kept: 'nowhere', undoable: false },
} as const satisfies Record<keyof AnyState, Keeping>;
