/** Worker threads that take tasks in the order given; results come back as promises. */
import type { Worker } from 'node:worker_threads';
import { buffersIn } from './buffers';
import type { Outcome, Outcomes, Task, TaskRunner } from './task';

interface Waiting {
  task: Task;
  resolve: (outcome: Outcome) => void;
  reject: (error: Error) => void;
}

export class TaskPool implements TaskRunner {
  readonly #workers: readonly Worker[];
  readonly #idle: Worker[];
  readonly #busy = new Map<Worker, Waiting>();
  readonly #queue: Waiting[] = [];
  #closed = false;

  /** @param makeWorker starts one thread */
  constructor(size: number, makeWorker: () => Worker) {
    this.#workers = Array.from({ length: size }, makeWorker);
    this.#idle = [...this.#workers];
    for (const worker of this.#workers) {
      worker.on('message', (outcome: Outcome) => this.#finished(worker, outcome));
      worker.on('error', (error) => this.#fail(worker, error instanceof Error ? error : new Error(String(error))));
      worker.on('exit', () => this.#fail(worker, new Error('A worker thread ended before its task was done.')));
    }
  }

  do<Kind extends keyof Outcomes>(task: Task & { kind: Kind }): Promise<Outcomes[Kind]> {
    const done = new Promise<Outcome>((resolve, reject) => {
      const waiting = { task, resolve, reject };
      // What is done of one method is summed up before more is begun: it gives its memory back, and answers a stop.
      if (task.kind === 'merge') this.#queue.unshift(waiting);
      else this.#queue.push(waiting);
      this.#start();
    });
    done.catch(() => {});
    return done as Promise<Outcomes[Kind]>;
  }

  /** Ends the threads; tasks not done by then never are. */
  async close(): Promise<void> {
    this.#closed = true;
    await Promise.all(this.#workers.map((worker) => worker.terminate()));
  }

  #start(): void {
    while (this.#queue.length > 0 && this.#idle.length > 0) {
      const worker = this.#idle.shift()!;
      const waiting = this.#queue.shift()!;
      this.#busy.set(worker, waiting);
      worker.postMessage(waiting.task, buffersIn(waiting.task));
    }
  }

  #finished(worker: Worker, outcome: Outcome): void {
    const waiting = this.#busy.get(worker);
    this.#busy.delete(worker);
    this.#idle.push(worker);
    this.#start();
    waiting?.resolve(outcome);
  }

  /** One broken thread ends the whole run: its answer could not be told from a right one. */
  #fail(worker: Worker, error: Error): void {
    if (this.#closed) return;
    this.#busy.get(worker)?.reject(error);
    this.#busy.delete(worker);
    for (const waiting of this.#queue.splice(0)) waiting.reject(error);
  }
}
