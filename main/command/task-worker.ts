/** A worker thread of the command line: does one task after another for the project it was started with. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Project } from '../../sim/project/document';
import { buffersIn } from './buffers';
import { type Task, taskDoer } from './task';

const port = parentPort;
if (port === null)
  throw new Error('task-worker.js is started by ringtrue.js as a worker thread. Run "npm run ringtrue".');

const doTask = taskDoer(workerData as Project);

port.on('message', (task: Task) => {
  const outcome = doTask(task);
  port.postMessage(outcome, buffersIn(outcome));
});
