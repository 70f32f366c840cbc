/** The methods of a command, simulated with their progress told; Ctrl-C ends that with the rings done so far. */
import type { Project } from '../../sim/project/document';
import type { MethodResult } from '../../sim/run/prediction';
import { progressLine } from './progress';
import { runMethods } from './run-methods';
import type { RunWishes } from './run-options';
import type { CommandIo } from './streams';

/** The run was stopped; the message says on what the figures that were printed rest. */
export class StoppedEarly extends Error {}

export interface StoppableRun {
  /** @throws {StoppedEarly} when it was stopped before there was anything to keep */
  results: () => AsyncGenerator<MethodResult, void, void>;
  /**
   * To be called when the figures are printed.
   *
   * @throws {StoppedEarly} when the run was stopped
   */
  end: () => void;
}

export function stoppableRun(
  project: Project,
  methods: readonly number[],
  wishes: RunWishes,
  io: CommandIo,
  workerProgram: URL,
): StoppableRun {
  const progress = progressLine(io.stderr, methods.length);
  const stop = io.interrupted?.();
  const names = methods.map((method) => project.methods[method]!.name);
  const done = new Map<string, MethodResult>();
  return {
    async *results() {
      const way = {
        budget: wishes.budget,
        timing: wishes.timing,
        workers: wishes.workersFor(project, methods.length),
        workerProgram,
        onProgress: ({ method, ringsDone, ringsWanted }: { method: number; ringsDone: number; ringsWanted: number }) =>
          progress.show(method, ringsDone / ringsWanted),
        ...(stop && { stop }),
      };
      for await (const result of runMethods(project, methods, way)) {
        done.set(result.prediction.name, result);
        yield result;
      }
      progress.clear();
      if (done.size === 0) throw new StoppedEarly('Stopped before the first rings were done.');
    },
    end() {
      if (!stop?.aborted) return;
      const cut = [...done.values()].filter(({ prediction }) => prediction.stopReason === 'cancelled');
      const missing = names.filter((name) => !done.has(name));
      if (cut.length === 0 && missing.length === 0) return;
      const without = missing.length === 0 ? '' : ` Not begun: ${missing.join(', ')}.`;
      throw new StoppedEarly(`Stopped; the figures rest on the rings done so far.${without}`);
    },
  };
}
