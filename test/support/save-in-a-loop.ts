/**
 * A program that saves each of its files over and over, all at the same time, until it is killed: `atomic` as Ringtrue
 * does, `plain` as it must not. It says "FILE NUMBER" after each save.
 */
import { readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { saveProjectFile } from '../../main/files/save-project-file';
import { numberedText, numberOf } from './numbered-text';

const LENGTH = 60_000;
const [, , way, ...files] = process.argv;

async function saveOverAndOver(file: string, place: number): Promise<never> {
  for (let number = (numberOf(readFileSync(file, 'utf8')) ?? 0) + 1; ; number += 1) {
    const text = numberedText(number, LENGTH);
    if (way === 'plain') await writeFile(file, text);
    else await saveProjectFile(file, text, null);
    process.stdout.write(`${place} ${number}\n`);
  }
}

await Promise.all(files.map(saveOverAndOver));
