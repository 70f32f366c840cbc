/**
 * Keeps the results in step with the project: a preview within a tenth of a second, then the file's own rule and
 * number of rings behind it. A newer project takes over at once, but a preview that has begun is shown, so that
 * results move while a slider moves.
 */
import type { Project } from '../../sim/project/document';
import { type RunningRings, runRings } from '../../sim/questions/rings';
import { TaskDropped, TaskFailed, type TaskPool } from '../../sim/questions/task-pool';
import type { MethodResult, RunProgress } from '../../sim/run/prediction';
import { useDocument } from './document-store';
import {
  forgetOutcome,
  keepFailure,
  keepOutcomes,
  needsGrading,
  needsStage,
  type Outcome,
  outcomeKey,
  rememberShown,
  type Stage,
  useRun,
  type Work,
} from './run-store';
import { shownProjectNow } from './shown-project';
import { useView } from './view-store';

/** Few enough that five methods are on the screen within 100 ms; more follow at once. */
const PREVIEW_TRIALS = 500;
const PREVIEW_SET_UPS = 40;
/** For all methods together, so that the screen follows within 100 ms. */
const PREVIEW_MS = 80;
const FIRST_TRIALS = 4000;
/** A limit that moves needs no new rings; what else depends on it waits until the hand rests. */
const HAND_RESTS_MS = 300;

export interface Simulation {
  /** Ends the work; what is done is kept. */
  cancel: () => void;
  /** Takes up again what was cancelled. */
  goOn: () => void;
}

/** Rings of some methods that are being made: together, or each for itself. */
interface RunningShares extends Omit<RunningRings, 'results'> {
  shares: { methods: readonly number[]; results: Promise<readonly MethodResult[]> }[];
}

/** Each worker gets its share of the methods at once: what is done is drawn together, and quick. */
function runPreview(pool: TaskPool, project: Project, methods: readonly number[]): RunningShares {
  const { settle: _, ...run } = project.run;
  const job = pool.job({ ...project, run: { ...run, trials: PREVIEW_TRIALS, rule: 'touch' } });
  const budgetMs = PREVIEW_MS / Math.ceil(methods.length / pool.size);
  const shares = Array.from({ length: Math.min(pool.size, methods.length) }, (_, worker) => {
    const share = methods.filter((_method, i) => i % pool.size === worker);
    const wish = { methods: share, setUps: PREVIEW_SET_UPS, budgetMs };
    return { methods: share, results: job.do({ kind: 'preview', ...wish }) };
  });
  return { shares, stop: job.stop, drop: () => job.drop() };
}

function firstRings(project: Project): Project {
  const { settle: _, ...run } = project.run;
  return { ...project, run: { ...run, trials: Math.min(run.trials, FIRST_TRIALS) } };
}

/** One method after the other, each on all workers. */
function runLonger(
  pool: TaskPool,
  project: Project,
  methods: readonly number[],
  onProgress: (progress: RunProgress) => void,
): RunningShares {
  const { results, ...ways } = runRings(pool, project, methods, { onProgress });
  const asList = (result: MethodResult | null): MethodResult[] => (result === null ? [] : [result]);
  const shares = results.map((result, i) => ({ methods: methods.slice(i, i + 1), results: result.then(asList) }));
  return { shares, ...ways };
}

function activeMethods(project: Project): number[] {
  const { switchedOff } = useView.getState();
  return project.methods.flatMap(({ name }, i) => (switchedOff.includes(name) ? [] : [i]));
}

function methodsFor(project: Project, stage: Stage): number[] {
  return activeMethods(project).filter(
    (method) => needsStage(project, method, stage) || (stage === 'full' && needsGrading(project, method)),
  );
}

function nothingDone(project: Project): Work {
  return { ringsDone: 0, ringsWanted: activeMethods(project).length * project.run.trials };
}

/** @param isDrawn resolves when what was shown stands on the screen; the longer runs wait for it after a preview */
export function simulateProject(pool: TaskPool, isDrawn: () => Promise<void>): Simulation {
  /** What is to be worked on next. */
  let wanted: Project | null = null;
  let running: { project: Project; stage: Stage; rings: RunningShares } | null = null;
  let isWorking = false;
  /** A newer pass through the work takes over from one that has nothing to show yet. */
  let pass = 0;
  let isCancelled = false;
  /** Set while a limit moves: the work that follows waits until the hand rests. */
  let handRests: ReturnType<typeof setTimeout> | undefined;

  const runStage = async (project: Project, methods: number[], stage: Stage): Promise<void> => {
    const ringsWanted = methods.length * project.run.trials;
    const done = new Map<number, RunProgress>();
    const progress = (progress: RunProgress): void => {
      if (isCancelled) return;
      done.set(progress.method, progress);
      const ringsDone = [...done.values()].reduce((sum, method) => sum + method.ringsDone, 0);
      useRun.setState({ work: { ringsDone, ringsWanted } });
    };
    const showLimitMm = project.limits.showGapMm;
    const runs = (): RunningShares => {
      if (stage === 'preview') return runPreview(pool, project, methods);
      return stage === 'full'
        ? runLonger(pool, project, methods, progress)
        : runLonger(pool, firstRings(project), methods, () => {});
    };
    const begun = { project, stage, rings: runs() };
    running = begun;
    /** Shown together at the end: each showing takes the page a redraw. */
    const together = new Map<number, Outcome>();
    await Promise.all(
      begun.rings.shares.map(async (share) => {
        try {
          const found = (await share.results).map((result, k): [number, Outcome] => {
            return [share.methods[k] ?? 0, { result, stage, showLimitMm }];
          });
          if (stage === 'full' && !isCancelled) keepOutcomes(project, new Map(found));
          else for (const [method, outcome] of found) together.set(method, outcome);
        } catch (error) {
          if (error instanceof TaskDropped) return;
          if (!(error instanceof TaskFailed)) throw error;
          // Which of a share it was, its own longer run tells.
          if (stage !== 'preview') for (const method of share.methods) keepFailure(project, method, error.message);
        }
      }),
    );
    keepOutcomes(project, together);
    if (running === begun) running = null;
  };

  const work = async (): Promise<void> => {
    const mine = ++pass;
    isWorking = true;
    while (wanted) {
      const project = wanted;
      wanted = null;
      useRun.setState({ work: nothingDone(project) });
      for (const stage of ['preview', 'first', 'full'] as const) {
        const methods = methodsFor(project, stage);
        if (methods.length === 0 || wanted || isCancelled) continue;
        await runStage(project, methods, stage);
        if (stage === 'preview' && pass === mine) await isDrawn();
        if (pass !== mine) return;
      }
    }
    isWorking = false;
    useRun.setState({ work: handRests === undefined ? null : nothingDone(shownProjectNow()) });
  };

  const stopWaiting = (): void => {
    if (handRests === undefined) return;
    clearTimeout(handRests);
    handRests = undefined;
    if (!isWorking) useRun.setState({ work: null });
  };

  const dropRunning = (): void => {
    running?.rings.drop();
  };

  const begin = (project: Project): void => {
    wanted = project;
    isCancelled = false;
    const waits = running && (running.stage === 'preview' || isSameRings(running.project, project));
    if (isWorking && waits) return;
    dropRunning();
    void work();
  };

  const request = (): void => {
    const project = shownProjectNow();
    stopWaiting();
    if (activeMethods(project).some((method) => needsStage(project, method, 'full'))) {
      begin(project);
    } else if (activeMethods(project).some((method) => needsGrading(project, method))) {
      if (!isWorking) useRun.setState({ work: nothingDone(project) });
      handRests = setTimeout(() => {
        handRests = undefined;
        dropRunning();
        begin(project);
      }, HAND_RESTS_MS);
    }
  };

  useDocument.subscribe((_, before) => {
    rememberShown(before.project);
    rememberShown(shownProjectNow());
    request();
  });
  useView.subscribe((view, before) => {
    if (view.switchedOff !== before.switchedOff) request();
  });
  request();

  return {
    cancel() {
      stopWaiting();
      wanted = null;
      isCancelled = true;
      const { work } = useRun.getState();
      if (running && work) useRun.setState({ work: { ...work, isStopped: true } });
      running?.rings.stop();
    },
    goOn() {
      const project = shownProjectNow();
      for (const method of activeMethods(project)) {
        const outcome = useRun.getState().outcomes.get(outcomeKey(project, method));
        if (outcome?.result.prediction.stopReason === 'cancelled') forgetOutcome(project, method);
      }
      request();
    },
  };
}

/** Whether only the show limit, or nothing that the rings follow from, differs. */
function isSameRings(a: Project, b: Project): boolean {
  return a.methods.length === b.methods.length && a.methods.every((_, i) => outcomeKey(a, i) === outcomeKey(b, i));
}
