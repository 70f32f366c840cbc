/** Worker threads that take tasks in the order given; results come back as promises. */
import type { Worker } from 'node:worker_threads';
import type { Done, Task } from './block-task';

interface Waiting {
  task: Task;
  resolve: (done: Done) => void;
  reject: (error: Error) => void;
}

export class TaskPool {
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
      worker.on('message', (done: Done) => this.#finished(worker, done));
      worker.on('error', (error) => this.#fail(worker, error instanceof Error ? error : new Error(String(error))));
      worker.on('exit', () => this.#fail(worker, new Error('A worker thread ended before its task was done.')));
    }
  }

  do(task: Task): Promise<Done> {
    return new Promise((resolve, reject) => {
      this.#queue.push({ task, resolve, reject });
      this.#start();
    });
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
      worker.postMessage(waiting.task);
    }
  }

  #finished(worker: Worker, done: Done): void {
    const waiting = this.#busy.get(worker);
    this.#busy.delete(worker);
    this.#idle.push(worker);
    this.#start();
    waiting?.resolve(done);
  }

  /** One broken thread ends the whole run: its answer could not be told from a right one. */
  #fail(worker: Worker, error: Error): void {
    if (this.#closed) return;
    this.#busy.get(worker)?.reject(error);
    this.#busy.delete(worker);
    for (const waiting of this.#queue.splice(0)) waiting.reject(error);
  }
}
